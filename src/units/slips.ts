import { readUnit, type Unit } from './compose.js';
import { sameDimension } from './dimension.js';
import { nameOf } from './kinds.js';
import { meantUnits, nearestUnits } from './nearest.js';
import { readNumber } from './number.js';
import { type QuantityProblem, quoted } from './problem.js';

/** The messages for what people mistype, each with what to write instead. */

type At = readonly [start: number, end: number];

export function isRatio(wanted: Unit): boolean {
  return Object.keys(wanted.dimension).length === 0;
}

/** `a length such as mm or in`. */
export function expectedOf(wanted: Unit): string {
  const known = expectations.get(wanted.text);
  if (known !== undefined) return known;
  const says = isRatio(wanted)
    ? 'a number without a unit, a ratio such as 3.73:1, or %'
    : `${nameOf(wanted.dimension) ?? 'a quantity'} such as ${unitsThatFit(wanted)}`;
  expectations.set(wanted.text, says);
  return says;
}
const expectations = new Map<string, string>();

function unitsThatFit(wanted: Unit): string {
  const [first = wanted.text, second] = [...new Set([wanted.text, ...nearestUnits('', wanted.dimension)])];
  return second === undefined ? first : `${first} or ${second}`;
}

/** `2,5 mm`, `1,100 kg`, `1.100,5 kg` and `1 100 kg`; in a list, a comma that may be either a mark or a separator. */
export function commaProblem(text: string, start: number, end: number, wanted: Unit): QuantityProblem | undefined {
  const body = text.slice(start, end);
  const comma = body.startsWith('[')
    ? /(?<![\d.])\d{1,30},\d{1,30}(?![\d.])/u.exec(body)
    : /\d[\d.,]{0,40},[\d.,]{0,40}\d|\d{1,3}(?: \d{3}){1,9}(?![\d/])/u.exec(body);
  if (!comma) return undefined;
  const written = comma[0];
  const at = [start + comma.index, start + comma.index + written.length] as const;
  const instead = (number: string) =>
    (body.slice(0, comma.index) + number + body.slice(comma.index + written.length)).slice(0, 60);
  const expected = `${expectedOf(wanted)}, with a decimal point`;
  if (body.startsWith('[')) {
    const hint = `write a point for decimals, and a space behind each comma between readings`;
    return { code: 'decimal-comma', found: quoted(written), expected, hint, at };
  }
  if (/^\d{1,3}(?: \d{3})+$/.test(written)) {
    return {
      code: 'number',
      found: quoted(written),
      expected: expectedOf(wanted),
      hint: `write ${instead(written.replaceAll(' ', ''))}`,
      at,
    };
  }
  const grouped = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(written);
  const decimal = written.replaceAll(/[.,](?=.*[.,])/g, '').replace(',', '.');
  const either =
    grouped && /^\d{1,3},\d{3}$/.test(written) ? `, or ${instead(decimal)} if the comma marks decimals` : '';
  return {
    code: 'decimal-comma',
    found: quoted(written),
    expected,
    hint: `write ${instead(grouped ? written.replaceAll(',', '') : decimal)}${either}`,
    at,
  };
}

/** A number was wanted. */
export function notANumber(text: string, start: number, end: number, wanted: Unit): QuantityProblem {
  const rest = text.slice(start, end);
  const around = /^(?:[<>≤≥~≈=]+|about|approx\.?|circa|ca\.?)\s*/iu.exec(rest);
  const hint = around
    ? `write the value itself, and how far it can be off: ${rest.slice(around[0].length, 30)} ± …`
    : /\d[/⁄]\d/u.test(rest)
      ? 'write a fraction of whole numbers, such as 3/4 or 1-1/8'
      : /^[+\-−]?\.?\d/u.test(rest)
        ? 'write at most 30 digits and an exponent within ±30'
        : `write the number first, such as 10 ${wanted.text}`.replace(/ 1$/, '');
  return { code: 'number', found: quoted(rest), expected: expectedOf(wanted), hint, at: [start, end] };
}

/** `2-3 mm`: where the range ends, if there is one behind the number that ends at `from`. */
export function rangeProblem(
  text: string,
  start: number,
  from: number,
  end: number,
  wanted: Unit,
): QuantityProblem | undefined {
  const dash = /^\s{0,9}(?:-|–|—|to|\.\.\.?|…)\s{0,9}(?=\d)/u.exec(text.slice(from, end));
  const first = dash && readNumber(text, start);
  const second = dash && readNumber(text, from + dash[0].length);
  if (!first || !second) return undefined;
  const middle = first.value.plus(second.value).div(2);
  const half = second.value.minus(first.value).abs().div(2);
  const behind = text.slice(second.end, end).trim() || wanted.text;
  return {
    code: 'range',
    found: quoted(text.slice(start, end)),
    expected: `one value: ${expectedOf(wanted)}`,
    hint: `write ${middle.toString()} ± ${half.toString()} ${behind.slice(0, 20)}`,
    at: [start, second.end],
  };
}

export function noUnit(number: string, at: At, wanted: Unit): QuantityProblem {
  return {
    code: 'unit-missing',
    found: `${quoted(number)} without a unit`,
    expected: expectedOf(wanted),
    hint: `write ${number.slice(0, 40)} ${wanted.text}`,
    at,
  };
}

export function unknownUnit(found: string, at: At, wanted: Unit): QuantityProblem {
  const near = isRatio(wanted) ? nearestUnits(found) : nearestUnits(found, wanted.dimension);
  return {
    code: 'unit-unknown',
    found: `${quoted(found)}, which is no unit that is known here`,
    expected: expectedOf(wanted),
    hint: isRatio(wanted) && near[0] !== '%' ? 'leave the unit out' : `did you mean ${near.slice(0, 2).join(' or ')}?`,
    at,
  };
}

export function notThatUnit(found: Unit, written: string, at: At, wanted: Unit): QuantityProblem {
  const name = nameOf(found.dimension);
  const meant = meantUnits(written).find((u) => sameDimension(readUnit(u)!.dimension, wanted.dimension));
  return {
    code: 'dimension',
    found: name === undefined ? `${quoted(written)}, which is of another kind` : `${written}, which is ${name}`,
    expected: expectedOf(wanted),
    hint: isRatio(wanted)
      ? 'leave the unit out'
      : meant === undefined
        ? `give the value in ${wanted.text}`
        : `did you mean ${meant}?`,
    at,
  };
}

export function uncertaintyProblem(hint: string, at: At): QuantityProblem {
  return {
    code: 'uncertainty',
    found: 'an uncertainty that cannot be taken as it stands',
    expected: 'such as 2.48 ± 0.02 mm or 1.2 mm ± 4 %',
    hint,
    at,
  };
}

export function readingsProblem(found: string, hint: string, at: At): QuantityProblem {
  return {
    code: 'readings',
    found: quoted(found),
    expected: 'readings such as [2.48, 2.51, 2.50] mm or [2.48 ± 0.02 mm, 2.51 ± 0.02 mm]',
    hint,
    at,
  };
}
