import { Decimal } from './decimal.js';
import { type Dimension, timesPower } from './dimension.js';
import { type Atom, units } from './factors.js';

/** A unit that was read: how it is printed, and how it leads to SI (`si = x · factor + offset`). */
export interface Unit {
  text: string;
  factor: Decimal;
  offset?: Decimal;
  dimension: Dimension;
}

/**
 * A unit as people write it. Products are joined by `·`, `*`, `.`, `-` or a space (`ft·lbf`, `ft-lbf`, `N m`, and `Nm`),
 * powers are written `mm4`, `mm^4` or `mm⁴` (`s-1`, `s^-1`, `s⁻¹`), and one `/` is followed by one unit or by a
 * product in brackets (`N·m/deg`, `kg/(m·s)`), so that nothing hangs on which operator binds first.
 *
 * @returns undefined if it cannot be read
 */
export function readUnit(text: string): Unit | undefined {
  const known = cache.get(text);
  if (known) return known;
  const read = text.length > 40 ? undefined : compose(text.trim());
  if (read && cache.size < 500) cache.set(text, read);
  return read;
}

const cache = new Map<string, Unit>();
/** The only product that people write without a sign between. */
const JOINED = /^(k?N)(mm?)$/;
const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const raisedWord = /^(.+?)(?:\^?([-−]?\d)|(⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]))?$/u;

interface Term {
  atom: Atom;
  power: number;
}

function compose(text: string): Unit | undefined {
  const whole = units.get(text);
  if (whole) return whole;
  const slash = text.indexOf('/');
  const over = slash < 0 ? '' : text.slice(slash + 1).trim();
  const above = product(slash < 0 ? text : text.slice(0, slash));
  const bracketed = /^\((.*)\)$/.exec(over)?.[1];
  const below = slash < 0 ? [] : product(bracketed ?? over);
  if (!above || !below || (bracketed === undefined && below.length > 1)) return undefined;
  const ones = (terms: Term[]) => terms.some((t) => t.atom.text === '1');
  if (ones(below) || (ones(above) && (above.length > 1 || slash < 0))) return undefined;

  let factor = new Decimal(1);
  let dimension: Dimension = {};
  for (const { atom, power } of [...above, ...below.map((t) => ({ ...t, power: -t.power }))]) {
    if (atom.offset || atom.text === '%') return undefined;
    factor = factor.times(atom.factor.pow(power));
    dimension = timesPower(dimension, atom.dimension, power);
  }
  const printed =
    print(above) + (below.length === 0 ? '' : below.length === 1 ? `/${print(below)}` : `/(${print(below)})`);
  return { text: printed, factor, dimension };
}

function product(text: string): Term[] | undefined {
  const words = text
    .trim()
    .replaceAll(/\s*[·*×⋅]\s*|\.(?=\D)|-(?=\p{L})/gu, ' ')
    .split(/\s+/);
  const terms: Term[] = [];
  for (const word of words) {
    const read = term(word);
    if (read) terms.push(read);
    else if (JOINED.test(word)) terms.push(...word.split(JOINED).flatMap((part) => term(part) ?? []));
    else return undefined;
  }
  return terms;
}

function term(word: string): Term | undefined {
  const plain = units.get(word);
  if (plain) return { atom: plain, power: 1 };
  const [, symbol, digits, raised] = raisedWord.exec(word) ?? [];
  const atom = symbol === undefined ? undefined : units.get(symbol);
  const exponent = digits ?? raised?.replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/u, (c) => String(superscripts.indexOf(c)));
  if (!atom || exponent === undefined || !units.has(atom.text) || atom.text === '1') return undefined;
  const power = Number(exponent.replace(/[−⁻]/u, '-'));
  return power === 0 || Math.abs(power) > 6 ? undefined : { atom, power };
}

function print(terms: readonly Term[]): string {
  return terms.map(({ atom, power }) => atom.text + (power === 1 ? '' : raise(power))).join('·');
}

function raise(power: number): string {
  return String(power)
    .replace('-', '⁻')
    .replace(/\d/g, (c) => superscripts[Number(c)]!);
}
