import type { Value } from '../../../calc/value.js';
import type { Designated } from '../../../project/fields.js';

/** A size that a designation stands for. It is nominal, so that it has no uncertainty of its own. */
export function fromDesignation(designated: Designated<object>, si: number, unit: string): Value {
  return {
    si,
    unit,
    parts: new Map(),
    assumed: new Set(),
    origin: { kind: 'note', place: designated.at, text: designated.written },
  };
}
