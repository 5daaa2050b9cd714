import { Decimal as Library } from 'decimal.js';

/** Decimal arithmetic with 40 digits: enough that no conversion of ours ever shows noise. */
export const Decimal = Library.clone({ precision: 40, rounding: Library.ROUND_HALF_EVEN, defaults: true });
export type Decimal = Library;

/** π to the precision above; a literal, because the library takes 9 ms to find it. */
export const PI = new Decimal('3.141592653589793238462643383279502884197');
