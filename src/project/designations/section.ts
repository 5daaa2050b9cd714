import type { SectionShape } from '../../calc/sections/section-of.js';
import type { Source } from '../../calc/sheet.js';
import { near } from '../../platform/near.js';
import { readNumber } from '../../units/number.js';
import { toSI } from '../../units/unit.js';
import { type Read, reader } from './reading.js';
import { type Profile, profiles, shapes, whyImpossible } from './section-shapes.js';

/** A section by its designation. */
export interface Section {
  /** In its one printed spelling. */
  text: string;
  profile: Profile;
  /** Its sizes in m, as the section sheets take them. */
  shape: SectionShape;
  /** Standard of a hollow section, an angle or a channel. */
  standard?: string;
  /** Where sizes that were not written come from. */
  source?: Source;
}

const BEHIND = /^\s?(?:r\s?(\d{1,3}(?:\.\d{1,3})?))?\s?(?:\(\s?([^()]{1,40})\s?\))?$/iu;
/** Of any dimension, m. */
const [SMALLEST, LARGEST] = [0.0001, 1];

/**
 * Reads `RHS 50x30x2.5 (EN 10219)`, `CHS 48.3x3.2`, `FL 60x2`, `EA 50x50x5`, `PFC 100x50`, `HAT 60x40x20x2.0 r3` and the
 * other {@link profiles}. `r` is the radius in mm: the outer one of a hollow section, the inner one of a pressing's bends.
 * Rectangular hollow sections name their standard or give the radius, since their corners differ.
 */
export const readSection = reader('a section such as RHS 50x30x2.5 (EN 10219)', (body, refuse): Read<Section> => {
  const word = /^([A-Za-z]{1,6})\s?(?=[\d.½¼¾⅛⅜⅝⅞])/u.exec(body);
  const profile = word?.[1]?.toUpperCase() as Profile | undefined;
  if (!word || !profile || !Object.hasOwn(profiles, profile))
    return refuse(unknownProfile(word?.[1] ?? /^[A-Za-z]*/u.exec(body)![0]), word?.[1]);
  const sizes = readSizes(body, word[0].length);
  if (!sizes) return refuse(`write ${profile} and its dimensions with x between: ${profiles[profile]}`);
  if (sizes.metres.some((x) => x < SMALLEST || x > LARGEST))
    return refuse('dimensions lie between 0.1 mm and 1000 mm; inches are marked, as FL 2x1/4 in');
  const behind = BEHIND.exec(body.slice(sizes.end));
  if (!behind)
    return refuse(
      `only a radius, as r3, and a standard in brackets stand behind the dimensions`,
      body.slice(sizes.end).trim(),
    );
  const radius = behind[1] === undefined ? undefined : toSI(behind[1], 'mm');
  const read = shapes[profile]({ n: sizes.metres, radius, standard: behind[2]?.trim(), refuse });
  if ('ok' in read) return read;
  const impossible = whyImpossible(read.shape);
  if (impossible) return refuse(`${impossible}: the order is ${profiles[profile]}`);
  const text = `${profile} ${sizes.text}${behind[1] === undefined ? '' : ` r${Number(behind[1])}`}${read.standard === undefined ? '' : ` (${read.standard})`}`;
  return { ok: true, text, profile, ...read };
});

/** Dimensions with `x` between, behind them `in` or `"` where they are inches. */
function readSizes(body: string, from: number): { metres: number[]; text: string; end: number } | undefined {
  const written: string[] = [];
  const numbers: string[] = [];
  const printed: string[] = [];
  let at = from;
  for (;;) {
    const next = readNumber(body, at);
    if (!next || next.value.lte(0) || numbers.length === 4) return undefined;
    written.push(body.slice(at, next.end).trim());
    // A fraction that no decimal ends stays as it was written.
    numbers.push(next.value.toString());
    printed.push(next.value.decimalPlaces() > 6 ? written.at(-1)! : next.value.toString());
    at = next.end;
    const cross = /^\s?[xX]\s?/u.exec(body.slice(at));
    if (!cross) break;
    at += cross[0].length;
  }
  const unit = /^\s?(mm\b|in\b|")/u.exec(body.slice(at));
  const inches = unit !== null && unit[1] !== 'mm';
  return {
    metres: numbers.map((x) => toSI(x, inches ? 'in' : 'mm')),
    text: (inches ? written : printed).join('x') + (inches ? ' in' : ''),
    end: at + (unit?.[0].length ?? 0),
  };
}

function unknownProfile(word: string): string {
  const [close] = near(word.toUpperCase(), Object.keys(profiles));
  return close && word !== ''
    ? `did you mean ${close}, ${profiles[close as Profile]}?`
    : `profiles are ${Object.keys(profiles).join(', ')}`;
}
