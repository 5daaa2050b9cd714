import type { ChoiceInput, Input, QuantityInput, SeriesInput } from './sheet.js';
import type { Value } from './value.js';

/** What a sheet is given, by the names of its inputs. */
export type SeriesValue = readonly Readonly<Record<string, Value>>[];
export type InputValue = Value | string | SeriesValue;
export type InputValues = Readonly<Record<string, InputValue | undefined>>;

export function isSeries(value: InputValue | undefined): value is SeriesValue {
  return Array.isArray(value);
}

export function isQuantity(input: Input): input is QuantityInput {
  return 'unit' in input;
}

export function isChoice(input: Input): input is ChoiceInput {
  return 'choices' in input;
}

export function hasColumns(input: Input): input is SeriesInput {
  return 'columns' in input;
}

/** All numbers among the inputs, those of series included. */
export function valuesOf(inputs: InputValues): Value[] {
  return Object.values(inputs).flatMap((v) =>
    v === undefined || typeof v === 'string' ? [] : isSeries(v) ? v.flatMap((row) => Object.values(row)) : [v as Value],
  );
}
