import { Decimal } from './decimal.js';

/** A number as written, and the step of its last place (`2.50` → 0.01, `3/8` → 1/8). */
export interface Written {
  value: Decimal;
  step: Decimal;
  /** Offset behind the last character. */
  end: number;
}

const DECIMAL =
  /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE]([+\-−]?\d+)|\s?[×x]\s?10(?:\^([+\-−]?\d+)|([⁻⁺]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)))?(?![\d.]*[/⁄]\d)/uy;
const MIXED = /(?:(\d+)(?:\s+|\s?[-–]\s?))?(\d+)[/⁄](\d+)(?![\d.])/uy;
const VULGAR = /(\d+)?\s?([½¼¾⅛⅜⅝⅞])/uy;
const vulgar: Readonly<Record<string, readonly [number, number]>> = {
  '½': [1, 2],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};
const MOST_DIGITS = 30;
const LARGEST_EXPONENT = 30;

/**
 * Reads a number at `from`: `2.5`, `.5`, `4.5e3`, `4.5×10³`, `3/4`, `1-1/8`, `1 1/8`, `1½`, with a sign before it.
 *
 * @returns undefined where there is none, or where it has more than 30 digits or an exponent beyond ±30
 */
export function readNumber(text: string, from: number): Written | undefined {
  const sign = /^[+\-−]/.exec(text.slice(from, from + 1));
  const start = from + (sign ? 1 : 0);
  const read = readMixed(text, start) ?? readVulgar(text, start) ?? readDecimal(text, start);
  if (!read) return undefined;
  return sign && sign[0] !== '+' ? { ...read, value: read.value.negated() } : read;
}

function readMixed(text: string, from: number): Written | undefined {
  const match = matchAt(MIXED, text, from);
  if (!match || match[0].length > MOST_DIGITS) return undefined;
  const [all, whole = '0', numerator, denominator] = match;
  return fraction(Number(whole), Number(numerator), Number(denominator), from + all.length);
}

function readVulgar(text: string, from: number): Written | undefined {
  const match = matchAt(VULGAR, text, from);
  if (!match || match[0].length > MOST_DIGITS) return undefined;
  const [all, whole = '0', sign] = match;
  const [numerator, denominator] = vulgar[sign!]!;
  return fraction(Number(whole), numerator, denominator, from + all.length);
}

function fraction(whole: number, numerator: number, denominator: number, end: number): Written | undefined {
  if (denominator === 0 || whole > 1e9 || numerator > 1e9 || denominator > 1e9) return undefined;
  return {
    value: new Decimal(numerator).div(denominator).plus(whole),
    step: new Decimal(1).div(denominator),
    end,
  };
}

function readDecimal(text: string, from: number): Written | undefined {
  const match = matchAt(DECIMAL, text, from);
  if (!match) return undefined;
  const [all, e, caret, raised] = match;
  const digits = /^[\d.]*/.exec(all)![0];
  const exponent = Number((e ?? caret ?? lowered(raised ?? '⁰')).replace('−', '-'));
  if (digits.length > MOST_DIGITS || Math.abs(exponent) > LARGEST_EXPONENT) return undefined;
  const places = (digits.split('.')[1] ?? '').length;
  return {
    value: new Decimal(`${digits.replace(/\.$/, '')}e${exponent}`),
    step: new Decimal(`1e${exponent - places}`),
    end: from + all.length,
  };
}

function lowered(raised: string): string {
  return raised.replaceAll(/./gu, (c) => ({ '⁻': '-', '⁺': '+' })[c] ?? String('⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(c)));
}

function matchAt(pattern: RegExp, text: string, from: number): RegExpExecArray | null {
  pattern.lastIndex = from;
  return pattern.exec(text);
}
