import type { Value } from '../../calc/value.js';
import type { Measured } from '../../project/fields.js';
import type { Build } from '../../project/model.js';
import { sameDimension } from '../../units/unit.js';

/**
 * A measured field as a value. Its uncertainty is, in this order: what is written at the value or follows from repeated
 * readings, what build.md states for the instrument, half the last digit written; the last is marked as assumed.
 */
export function valueOf(measured: Measured, build: Build): Value {
  const { quantity, at } = measured;
  const source = `${at.file}#${at.path}`;
  const instrument = build.data.instruments?.find((i) => i.id === measured.with);
  const ofInstrument =
    instrument?.uncertainty && sameDimension(instrument.uncertainty.quantity.dimension, quantity.dimension)
      ? instrument.uncertainty.quantity.si
      : undefined;
  const stated =
    quantity.readings && quantity.expanded !== undefined && ofInstrument !== undefined
      ? Math.hypot(quantity.expanded, ofInstrument)
      : (quantity.expanded ?? ofInstrument);
  return {
    si: quantity.si,
    unit: quantity.unit,
    parts: new Map([[source, stated ?? quantity.halfDigit]]),
    assumed: new Set(stated === undefined && quantity.halfDigit > 0 ? [source] : []),
    origin: { kind: 'note', place: at, text: quantity.text },
  };
}
