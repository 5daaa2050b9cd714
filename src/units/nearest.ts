import { type Dimension, sameDimension } from './dimension.js';
import { everydayUnits } from './kinds.js';

/** Names that people write and that are not symbols, or that are the symbol of something else. */
const usualNames: Readonly<Record<string, readonly string[]>> = {
  nm: ['N·m'],
  inch: ['in'],
  inches: ['in'],
  mil: ['thou'],
  metre: ['m'],
  metres: ['m'],
  millimetre: ['mm'],
  millimetres: ['mm'],
  millimeters: ['mm'],
  foot: ['ft'],
  feet: ['ft'],
  micron: ['µm'],
  lbs: ['lb', 'lbf'],
  pound: ['lb', 'lbf'],
  pounds: ['lb', 'lbf'],
  ft·lb: ['ft·lbf'],
  lb·ft: ['ft·lbf'],
  in·lb: ['lbf·in'],
  in·lbs: ['lbf·in'],
  lb·in: ['lbf·in'],
  ftlb: ['ft·lbf'],
  ft·lbs: ['ft·lbf'],
  'lb/in': ['lbf/in'],
  kg·m: ['kgf·m'],
  kgs: ['kg'],
  kilo: ['kg'],
  kilos: ['kg'],
  grams: ['g'],
  ton: ['t'],
  tonne: ['t'],
  degree: ['deg'],
  degrees: ['deg'],
  c: ['degC'],
  celsius: ['degC'],
  kph: ['km/h'],
  kmh: ['km/h'],
  kmph: ['km/h'],
  'r/min': ['rpm'],
  'rev/min': ['rpm'],
  '1/min': ['rpm'],
  min·1: ['rpm'],
  min1: ['rpm'],
  litre: ['L'],
  litres: ['L'],
  liter: ['L'],
  ci: ['in³'],
  cid: ['in³'],
  sec: ['s'],
  secs: ['s'],
  hr: ['h'],
  hrs: ['h'],
  percent: ['%'],
  bhp: ['hp'],
  db: ['dB', 'dB(A)'],
  dba: ['dB(A)'],
  'db·(a)': ['dB(A)'],
  g: ['g_n'],
};

/**
 * The everyday units closest to what was written, best first. The same letters in another case, or a usual name, stand
 * alone; else those that differ in few letters.
 *
 * @param like only units of this dimension; those that fit are then named even where nothing is close
 */
export function nearestUnits(text: string, like?: Dimension): string[] {
  const candidates = everydayUnits()
    .filter((u) => !like || sameDimension(u.dimension, like))
    .map((u) => u.text);
  const meant = meantUnits(text).filter((u) => candidates.includes(u));
  if (meant.length > 0) return meant;
  const wanted = plain(text.slice(0, 40));
  const close = candidates
    .map((unit, order) => ({ unit, order, letters: lettersOf(unit) }))
    .filter(({ letters }) => Math.abs(letters.length - wanted.length) <= FARTHEST)
    .map(({ unit, order, letters }) => ({
      unit,
      order,
      far: distance(letters, wanted),
      longer: Math.max(letters.length, wanted.length),
    }))
    .filter(({ far, longer }) => far <= FARTHEST && far < longer - 1)
    .sort((a, b) => a.far - b.far || a.order - b.order)
    .map(({ unit }) => unit);
  return (close.length > 0 || !like ? close : candidates).slice(0, 3);
}

/** In how many letters a unit may differ from what was written. */
const FARTHEST = 2;

/** The units that a slip of case or a usual name stands for, such as `N·m` for `nm` or `ft·lbf` for `ft lb`. */
export function meantUnits(text: string): string[] {
  const wanted = plain(text.slice(0, 40));
  const sameLetters = everydayUnits()
    .filter((u) => lettersOf(u.text) === wanted)
    .map((u) => u.text);
  return [...new Set([...sameLetters, ...(usualNames[wanted] ?? [])])];
}

const digits = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Letters alone: case, spaces and the ways of writing products and powers do not count. */
function plain(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replaceAll(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/gu, (c) => String(digits.indexOf(c)))
    .replaceAll(/[\s*.×⋅-]+/g, '·')
    .replaceAll('^', '');
}

const known = new Map<string, string>();

/** The letters of an everyday unit, made once: texts that are no quantity come by the thousand. */
function lettersOf(unit: string): string {
  const letters = known.get(unit) ?? plain(unit);
  known.set(unit, letters);
  return letters;
}

/** Levenshtein's distance. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (const [i, letter] of [...a].entries()) {
    const next = [i + 1];
    for (let j = 1; j <= b.length; j++) {
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (letter === b[j - 1] ? 0 : 1)));
    }
    row = next;
  }
  return row[b.length]!;
}
