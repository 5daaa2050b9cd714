import { visible } from '../../platform/visible.js';
import type { ObsoleteUse } from '../../project/translate.js';

/** Where it is, and what stands for it now. */
export const obsoleteLine = ({ file, line, column, found, now }: ObsoleteUse): string =>
  visible(`${file}:${line}:${column}: ${found} is ${now}`);
