import { sameDimension, type Dimension } from './dimension.js';
import { everydayUnits } from './kinds.js';

/** Names that people write and that are not symbols, or that are the symbol of something else. */
const meant: Readonly<Record<string, readonly string[]>> = {
  nm: ['N·m'],
  inch: ['in'],
  inches: ['in'],
  mil: ['thou'],
  metre: ['m'],
  micron: ['µm'],
  lbs: ['lb', 'lbf'],
  pound: ['lb', 'lbf'],
  pounds: ['lb', 'lbf'],
  'ft·lb': ['ft·lbf'],
  'lb·ft': ['ft·lbf'],
  'in·lb': ['lbf·in'],
  'lb·in': ['lbf·in'],
  ftlb: ['ft·lbf'],
  'ft·lbs': ['ft·lbf'],
  'lb/in': ['lbf/in'],
  'kg·m': ['kgf·m'],
  kgs: ['kg'],
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
  'min⁻¹': ['rpm'],
  hz: ['Hz', 'rpm'],
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
  db: ['dB(A)', 'dB'],
  g: ['g_n'],
};

/**
 * The everyday units closest to what was written, best first: the same letters in another case, a usual name, then few
 * letters' difference.
 *
 * @param like only units of this dimension; those that fit are then named even where nothing is close
 */
export function nearestUnits(text: string, like?: Dimension): string[] {
  const wanted = plain(text.slice(0, 40));
  const others = meant[wanted] ?? [];
  const candidates = like ? everydayUnits.filter((u) => sameDimension(u.dimension, like)) : everydayUnits;
  const ranked = candidates.map((u, order) => {
    const letters = plain(u.text);
    const rank = letters === wanted ? 0 : others.includes(u.text) ? 1 : 2 * distance(letters, wanted);
    return { text: u.text, rank, order, close: rank < 2 || (rank <= 4 && rank < 2 * Math.max(letters.length, wanted.length) - 1) };
  });
  const close = ranked.filter((r) => r.close).sort((a, b) => a.rank - b.rank || a.order - b.order);
  return (close.length > 0 || !like ? close : ranked).map((r) => r.text).slice(0, 3);
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
