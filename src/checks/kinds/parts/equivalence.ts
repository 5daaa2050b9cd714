import { equivalentStiffness } from '../../../calc/sections/equivalent-stiffness.js';
import { equivalentStrength } from '../../../calc/sections/equivalent-strength.js';
import type { Source } from '../../../calc/sheet.js';
import { expanded, type Value } from '../../../calc/value.js';
import { originalYield, type YieldRange } from '../../../project/designations/steel-of-original.js';
import { showNumber, showQuantity } from '../../../units/show.js';
import { shownBy } from '../../engine/shown.js';
import { isMissing, type Maybe, type Missing, type Work } from '../../engine/work.js';
import { type Piece, stateOf } from '../body-structure-fields.js';
import { given } from './maybe.js';
import type { Get, Properties } from './member.js';

/** Whether a replacement is as stiff and as strong as the original was when it was made. */

const words = { bendingX: 'bending-x', bendingY: 'bending-y', torsion: 'torsion', axial: 'axial' } as const;

/** A section as it may be: alone, or as a box with the floor under it. */
interface Form {
  closed: boolean;
  get: Get;
}
interface Pair {
  was: Form;
  now: Form;
  subject: string;
}

export function examineEquivalence(piece: Piece, was: Properties, now: Properties, work: Work): void {
  const pairs = pairsOf(piece, was, now, work);
  stiffness(piece, pairs, work);
  strength(piece, pairs, work);
}

function pairsOf(piece: Piece, was: Properties, now: Properties, work: Work): Pair[] {
  const before = formsOf(piece, 'was', was, false, work);
  const after = formsOf(piece, stateOf(piece), now, jointShown(piece, work), work);
  const name = (form: Form, of: readonly Form[]) => (of.length > 1 ? [form.closed ? 'closed' : 'open'] : []);
  return before.flatMap((a) =>
    after.map((b) => ({
      was: a,
      now: b,
      subject: [piece.id, ...name(a, before).map((n) => `was-${n}`), ...name(b, after).map((n) => `now-${n}`)].join(
        '-',
      ),
    })),
  );
}

/** One form where it is known, else both. */
function formsOf(
  piece: Piece,
  state: 'was' | 'now' | 'planned',
  { get, closedBy }: Properties,
  shown: boolean,
  work: Work,
): Form[] {
  const open: Form = { closed: false, get };
  const by = piece[state]?.['closed-by'];
  if (!closedBy || by === 'none') return [open];
  if (by === undefined) return [{ closed: false, get: () => work.lacks('pieces', piece.id, state, 'closed-by') }];
  const closed: Form = { closed: true, get: closedBy(work.take(piece.floor, 'pieces', piece.id, 'floor')) };
  return by === 'floor' && shown ? [closed] : [open, closed];
}

function jointShown(piece: Piece, work: Work): boolean {
  const by = piece['joint-shown'];
  if (by === undefined) return false;
  const shown = shownBy(by, work.note, work.build, []);
  return shown.length > 0 && shown.every((s) => s.is === 'photo' || s.is === 'paper');
}

/** The least favourable of all pairs, with what each gives where they are several. */
function leastOf<T extends { value: Maybe; pair: Pair }>(all: readonly T[]): { least: T; marks: string[] } {
  const missing = all.find(({ value }) => isMissing(value));
  const least = missing ?? all.reduce((a, b) => ((b.value as Value).si < (a.value as Value).si ? b : a));
  if (missing || all.length === 1) return { least, marks: [] };
  const each = all.map(({ value, pair: { was, now } }) => {
    const form = (closed: boolean) => (closed ? 'closed by the floor' : 'open');
    return `${showNumber((value as Value).si, { digits: 3 })} with the original ${form(was.closed)} and the new one ${form(now.closed)}`;
  });
  return { least, marks: [`${each.join('; ')}: the less favourable decides`] };
}

function stiffness(piece: Piece, pairs: readonly Pair[], work: Work): void {
  const worked = pairs.map((pair) => ({
    pair,
    sheet: work.sheet(equivalentStiffness, pair.subject, {
      originalA: pair.was.get('A'),
      originalIx: pair.was.get('Ix'),
      originalIy: pair.was.get('Iy'),
      originalJ: pair.was.get('J'),
      replacementA: pair.now.get('A'),
      replacementIx: pair.now.get('Ix'),
      replacementIy: pair.now.get('Iy'),
      replacementJ: pair.now.get('J'),
    }),
  }));
  for (const name of ['bendingX', 'bendingY', 'torsion', 'axial'] as const) {
    const { least, marks } = leastOf(worked.map(({ pair, sheet }) => ({ pair, value: sheet.get(name) })));
    work.compare('body.equivalence-stiffness', `${piece.id}-${words[name]}`, least.value, { marks });
  }
}

/** With the greatest yield strength that the original may have; where the outcome hangs on it, up to which it is equivalent. */
function strength(piece: Piece, pairs: readonly Pair[], work: Work): void {
  const range = yieldOfOriginal(piece, work);
  const replacement = yieldOfReplacement(piece, work);
  const at = (pair: Pair, original: Maybe, subject: string) =>
    work.sheet(equivalentStrength, subject, {
      originalA: pair.was.get('A'),
      originalZx: pair.was.get('Zx'),
      originalZy: pair.was.get('Zy'),
      originalYield: original,
      replacementA: pair.now.get('A'),
      replacementZx: pair.now.get('Zx'),
      replacementZy: pair.now.get('Zy'),
      replacementYield: replacement,
    });
  const end = (which: 'least' | 'most'): Maybe =>
    'least' in range ? given(range[which], 'MPa', `${which} of ${range.because}`) : range;
  const spread = 'least' in range && range.least < range.most;
  const worked = pairs.map((pair) => ({
    pair,
    worst: at(pair, end('most'), pair.subject),
    best: spread ? at(pair, end('least'), `${pair.subject}-least-yield`) : undefined,
  }));
  for (const name of ['bendingX', 'bendingY', 'axial'] as const) {
    const all = worked.map(({ pair, worst, best }) => ({ pair, value: worst.get(name), best: best?.get(name) }));
    const { least, marks } = leastOf(all);
    const { best } = least;
    const onlyIf = (share: number) =>
      `equivalent only if the original yields at most ${Math.floor(((range as YieldRange).most * share) / 1e6 + 1e-9)} MPa (${(range as YieldRange).because})`;
    work.compare('body.equivalence-strength', `${piece.id}-${words[name]}`, least.value, {
      marks: [...marks, ...(spread && !isMissing(least.value) ? [shownRange(range)] : [])],
      ...(best && !isMissing(best)
        ? {
            range: {
              best,
              onlyIf,
              by: `the steel of the original ${piece.id}, tested`,
              todo: 'have the steel of the original tested: hardness, tensile test or the maker’s repair data',
            },
          }
        : {}),
    });
  }
}

const shownRange = ({ least, most, source }: YieldRange) =>
  `original taken to yield between ${showQuantity(least, 'MPa')} and ${showQuantity(most, 'MPa')}: ${source.document}, ${basisSays[source.basis]}`;
const basisSays: Readonly<Record<Source['basis'], string>> = {
  published: 'published',
  quoted: 'quoted',
  practice: 'no source',
  memory: 'recalled, not confirmed',
  derived: 'derived',
};

/** A hardness reading counts where the steel is not known; without one, build date and part. */
function yieldOfOriginal(piece: Piece, work: Work): YieldRange | Missing {
  const { was, part } = piece;
  if (!was) return work.lacks('pieces', piece.id, 'was', 'steel');
  const { steel, hardness } = was;
  const scale = was['hardness-scale'];
  const known = steel !== undefined && steel.known !== 'unknown';
  if (hardness && !scale && !known) return work.lacks('pieces', piece.id, 'was', 'hardness-scale');
  const reading = hardness && work.take(hardness, 'pieces', piece.id, 'was', 'hardness');
  const range = originalYield({
    steel,
    part,
    built: work.build.data.vehicle.built,
    ...(reading && scale && !isMissing(reading)
      ? { hardness: { reading: reading.si, expanded: expanded(reading), scale } }
      : {}),
  });
  return 'unusable' in range ? { missing: [], reason: range.unusable } : range;
}

function yieldOfReplacement(piece: Piece, work: Work): Maybe {
  const state = stateOf(piece);
  const steel = piece[state]?.steel;
  if (!steel) return work.lacks('pieces', piece.id, state, 'steel');
  if (steel.known === 'unknown' || steel.yield === undefined)
    return { missing: [], reason: `the steel of the new member (${state}) is not known` };
  return given(
    steel.yield,
    'MPa',
    `${steel.written}, ${steel.known === 'certificate' ? 'from its certificate' : 'least yield strength of the grade'}`,
  );
}
