import { readNumber } from '../../units/number.js';
import { toSI } from '../../units/unit.js';
import { type Read, reader } from './reading.js';

/** A wheel rim by its size. Lengths in m. */
export interface Rim {
  /** In its one printed spelling. */
  text: string;
  /** Between the flanges. */
  width: number;
  diameterCode: number;
  /** Nominal diameter, the code in inches; the bead seat differs from it by up to 1 mm. */
  diameter: number;
  /** Flange contour as marked, such as `J`. */
  flange?: string;
  /** Of the mounting face from the middle of the rim, positive towards the outside of the vehicle. */
  offset?: number;
}

const OFFSET = /[\s,]*(?:(?:ET|offset)\s?\+?(-?\d{1,3}(?:\.\d)?)|\s\+?(-?\d{1,3}(?:\.\d)?))\s?(?:mm)?$/iu;
const FLANGE = /^\s?(JJ|JK|J|K|B|D|P)(?=[\sx\d]|$)/iu;
const HUMP = /^\s?(?:H2|EH2\+?|EH2|FH|CH|H)$/iu;

/**
 * Reads `6Jx15 ET25`, `15x6J ET25`, `5-1/2Jx14` or `7x16`. The letter stands beside the width; without one the smaller
 * number is the width.
 */
export const readRim = reader('a rim size such as 6Jx15 ET25', (body, refuse): Read<Rim> => {
  const behind = OFFSET.exec(body);
  const size = behind ? body.slice(0, behind.index) : body;
  const first = readNumber(size, 0);
  const firstFlange = first && FLANGE.exec(size.slice(first.end));
  const cross = first && /^\s?[xX]\s?/u.exec(size.slice(first.end + (firstFlange?.[0].length ?? 0)));
  const from = first && cross ? first.end + (firstFlange?.[0].length ?? 0) + cross[0].length : undefined;
  const second = from === undefined ? undefined : readNumber(size, from);
  if (!first || !second) return refuse('write width, flange letter and rim code, then the offset in mm: 6Jx15 ET25');
  const secondFlange = FLANGE.exec(size.slice(second.end));
  const rest = size.slice(second.end + (secondFlange?.[0].length ?? 0));
  if (rest !== '' && !HUMP.test(rest)) return refuse('only the offset stands behind the size, as ET25', rest.trim());
  if (firstFlange && secondFlange) return refuse('the flange letter stands once, beside the width');

  const [a, b] = [first.value.toNumber(), second.value.toNumber()];
  if (a === b && !firstFlange && !secondFlange) return refuse('put the flange letter beside the width: 6Jx15');
  const widthFirst = firstFlange ? true : secondFlange ? false : a < b;
  const [width, code] = widthFirst ? [a, b] : [b, a];
  if (code < 10 || code > 24 || !Number.isInteger(code)) {
    return refuse(
      code > 90
        ? 'that looks like the stud pattern; the rim code is a whole number from 10 to 24'
        : 'rim codes are whole numbers from 10 to 24, the letter J stands beside the width',
    );
  }
  if (width < 3 || width > 14)
    return refuse('rim widths run from 3 to 14 inches, the letter J stands beside the width');
  const offset = behind?.[1] ?? behind?.[2];
  if (offset !== undefined && Math.abs(Number(offset)) > 150) return refuse('offsets lie within ±150 mm', offset);
  const flange = (firstFlange ?? secondFlange)?.[1]?.toUpperCase();
  return {
    ok: true,
    text: `${width}${flange ?? ''}x${code}${offset === undefined ? '' : ` ET${Number(offset)}`}`,
    width: toSI(width, 'in'),
    diameterCode: code,
    diameter: toSI(code, 'in'),
    ...(flange !== undefined && { flange }),
    ...(offset !== undefined && { offset: toSI(offset, 'mm') }),
  };
});
