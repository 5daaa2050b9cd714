import { Decimal } from './decimal.js';
import { readNumber, type Written } from './number.js';
import type { QuantityProblem } from './problem.js';
import { commaProblem, isRatio, notANumber, rangeProblem, readingsProblem, uncertaintyProblem } from './slips.js';
import type { Unit } from './unit.js';

/** Some of the text, and where it stands. */
export interface Span {
  text: string;
  at: readonly [start: number, end: number];
}

export interface Uncertainty {
  value: Decimal;
  /** Where it has a unit of its own: `1.2 mm ± 4 %`. */
  unit?: Span;
  at: Span['at'];
}

/** A quantity taken apart, before anything is made of its units. */
export interface Parts {
  value: Written;
  /** The number as written. */
  number: Span;
  /** Empty where none was written. */
  unit: Span;
  uncertainty?: Uncertainty;
}

/** Takes a quantity apart, or a list of readings, each with what it carries; the text is not empty and not overlong. */
export function split(text: string, wanted: Unit): Parts | { readings: readonly Parts[] } | QuantityProblem {
  const { at } = span(text, 0, text.length);
  const comma = commaProblem(text, ...at, wanted);
  return comma ?? (text[at[0]] === '[' ? splitReadings(text, ...at, wanted) : splitValue(text, ...at, wanted));
}

function splitValue(text: string, start: number, end: number, wanted: Unit): Parts | QuantityProblem {
  const bracket = text[start] === '(';
  const from = bracket ? skip(text, start + 1) : start;
  const first = readNumber(text, from);
  if (!first) return notANumber(text, start, end, wanted);
  const range = rangeProblem(text, from, first.end, end, wanted);
  if (range) return range;
  const whole: Whole = (isRatio(wanted) && ratio(text, first, from)) || minutes(text, first, wanted) || first;
  const number = span(text, from, whole.end);
  const sign = /±|\+\s?\/\s?[-−]|\+-/u.exec(text.slice(whole.end, end));
  if (!sign) {
    return bracket
      ? notANumber(text, start, end, wanted)
      : { value: whole, number, unit: whole.unit ?? span(text, whole.end, end) };
  }
  const before = whole.unit ?? span(text, whole.end, whole.end + sign.index);
  const second = readNumber(text, skip(text, whole.end + sign.index + sign[0].length));
  if (!second) return notANumber(text, whole.end + sign.index, end, wanted);
  const at = [whole.end + sign.index, second.end] as const;
  const after = span(text, second.end, end);
  const value = second.value;
  if (bracket) {
    if (before.text !== '' || !after.text.startsWith(')')) return notANumber(text, start, end, wanted);
    return { value: whole, number, unit: span(text, after.at[0] + 1, end), uncertainty: { value, at } };
  }
  if (before.text !== '') return { value: whole, number, unit: before, uncertainty: { value, unit: after, at } };
  if (after.text === '%') {
    return uncertaintyProblem('say of what the per cent are: write 1.2 mm ± 4 %, or (95 ± 2) %', after.at);
  }
  return { value: whole, number, unit: after, uncertainty: { value, at } };
}

/** `unit` is set where it stands inside the number. */
type Whole = Written & { unit?: Span };

/** `3.73:1` and `41:11`; whole numbers are counted, and a ratio of two of them has no last place. */
function ratio(text: string, first: Written, from: number): Whole | undefined {
  const colon = /^\s?:\s?/u.exec(text.slice(first.end, first.end + 3));
  const second = colon && readNumber(text, first.end + colon[0].length);
  if (!second) return /^\d+\/\d+$/.test(text.slice(from, first.end)) ? { ...first, step: new Decimal(0) } : undefined;
  if (second.value.lte(0)) return undefined;
  const value = first.value.div(second.value);
  const places = (x: Written) => (x.step.lt(1) && !x.value.isZero() ? x.step.div(x.value.abs()) : new Decimal(0));
  const counted =
    first.step.eq(1) && second.step.eq(1) && second.value.eq(1)
      ? first.step
      : value.abs().times(places(first).plus(places(second)));
  return { value, step: counted, end: second.end };
}

/** `1°30′`: degrees and minutes of arc. */
function minutes(text: string, first: Written, wanted: Unit): Whole | undefined {
  if (wanted.dimension.angle !== 1 || Object.keys(wanted.dimension).length > 1) return undefined;
  const degree = /^\s?(?:°|deg)\s?(?=\d)/u.exec(text.slice(first.end, first.end + 6));
  const second = degree && readNumber(text, first.end + degree[0].length);
  const mark = second && /^\s?(?:′|'|’|arcmin)/u.exec(text.slice(second.end, second.end + 8));
  if (!mark || second.value.gte(60) || !first.step.eq(1)) return undefined;
  const sign = first.value.isNegative() ? -1 : 1;
  return {
    value: first.value.plus(second.value.div(60).times(sign)),
    step: second.step.div(60),
    end: second.end + mark[0].length,
    unit: { text: 'deg', at: [first.end, first.end + degree[0].length] },
  };
}

/**
 * `[2.48, 2.51] mm`, `[2.48 mm, 0.099 in]`, `[40 ± 1, 41 ± 2] mm`: each reading keeps its own unit and ±. A unit behind
 * the list, or the only one that stands in it, holds for readings without one.
 */
function splitReadings(
  text: string,
  start: number,
  end: number,
  wanted: Unit,
): { readings: readonly Parts[] } | QuantityProblem {
  const list = listItems(text, start, end);
  if ('code' in list) return list;
  const readings: Parts[] = [];
  for (const { at } of list.items) {
    const read = splitValue(text, ...at, wanted);
    if ('code' in read) return read;
    readings.push(read);
  }
  const { behind } = list;
  const own = readings.map((r) => r.unit).filter((u) => u.text !== '');
  const both = behind.text === '' ? undefined : own.find((u) => u.text !== behind.text);
  if (both) return readingsProblem(both.text, `write the unit once: at each reading, or behind the list`, both.at);
  const common = behind.text !== '' ? behind : new Set(own.map((u) => u.text)).size === 1 ? own[0] : undefined;
  return { readings: readings.map((r) => (r.unit.text === '' && common ? { ...r, unit: common } : r)) };
}

/** The readings of a list, and what stands behind it. A list is closed, and none of its places is empty. */
export function listItems(
  text: string,
  start = 0,
  end = text.length,
): { items: readonly Span[]; behind: Span } | QuantityProblem {
  const close = text.indexOf(']', start);
  if (close < 0 || close >= end) return readingsProblem(text.slice(start, end), 'close the list with ]', [start, end]);
  const open = text.indexOf('[', start);
  const behind = span(text, close + 1, end);
  if (/^(?:±|\+\s?\/|\+-)/u.test(behind.text))
    return readingsProblem(behind.text, 'write ± at each reading, inside the brackets', behind.at);
  const items: Span[] = [];
  for (let from = open + 1; from <= close; ) {
    const mark = text.slice(from, close).search(/[,;]/u);
    const until = mark < 0 ? close : from + mark;
    items.push(span(text, from, until));
    from = until + 1;
  }
  if (items.length > 1 && items.at(-1)!.text === '') items.pop();
  if (items.every((item) => item.text === ''))
    return readingsProblem('[]', 'write the readings between the brackets', [open, close + 1]);
  return { items, behind };
}

function span(text: string, from: number, to: number): Span {
  const part = text.slice(from, to);
  const trimmed = part.trim();
  const start = trimmed === '' ? from : from + part.length - part.trimStart().length;
  return { text: trimmed, at: [start, start + trimmed.length] };
}

function skip(text: string, from: number): number {
  return from + /^\s*/u.exec(text.slice(from))![0].length;
}
