import { type Answer, type Stage, stageNames } from '../../project/common.js';
import { placeOfField } from '../../project/find-field.js';
import type { Note } from '../../project/model.js';
import type { CodeItem } from '../codes/codes.js';
import { weakest } from '../codes/limit.js';
import { mayApply } from '../codes/limits.js';
import { answersOf, toldBy } from './answers.js';
import type { Finding } from './finding.js';
import { type HoldPoint, holdPointsOf, type Kind } from './kind.js';
import { ofAnother } from './of-another.js';
import {
  type Evidence,
  evidenceIn,
  missingOf,
  namedOf,
  partsOf,
  provesText,
  servedBy,
  showName,
  shownParts,
  type TakenAt,
} from './proofs.js';
import { coveredOn } from './stages.js';
import { isNotApplicable, saysNo } from './told.js';
import { marksOf } from './verdict.js';
import type { Ground } from './work.js';

/** The findings on hold points, and which parts of which evidence items they ask for, by note and item. */
export interface Held {
  findings: Finding[];
  /** Key `note item`; `all` where the item asks for nothing else. */
  served: ReadonlyMap<string, 'all' | readonly string[]>;
}

/**
 * Each hold point of each note. What an evidence item asks for in the same words is asked here alone, under the id of the
 * item.
 *
 * @param raised whether a note asks for an item
 */
export function checkHoldPoints(
  notes: readonly Note[],
  kinds: ReadonlyMap<string, Kind>,
  ground: Ground,
  takenAt: TakenAt,
  raised: (note: Note, item: CodeItem) => boolean,
): Held {
  const served = new Map<string, 'all' | readonly string[]>();
  const findings = notes.flatMap((note) => {
    const evidence = evidenceIn(note, takenAt);
    const answers = answersOf(note, kinds);
    return holdPointsOf(kinds.get(note.kind)!, note).map((point): Finding => {
      const serves = servedBy(point);
      const item = serves && (ground.items.get(serves.proof) as CodeItem | undefined);
      const test = item && raised(note, item) && mayApply(item.applies, ground.world(note));
      if (!serves || !item || !test || !('holds' in test) || !test.holds) return heldBefore(point, note, evidence);
      const key = keyOf(note, item.id);
      const before = served.get(key);
      served.set(key, serves.parts.length === 0 || before === 'all' ? 'all' : [...(before ?? []), ...serves.parts]);
      return heldBefore(point, note, evidence, item, toldBy(answers, item.id));
    });
  });
  return { findings, served };
}

export const keyOf = (note: Note, item: string): string => `${note.name} ${item}`;

const rests = { form: 'order', basis: 'own-copy', marks: [] as string[] } as const;

/** What keeps a photo or document that names a part from being taken for it. */
type Refused = { is: 'stage' | 'late' | 'undated' | 'early' | 'other' | 'form'; evidence: Evidence; says: string };

function heldBefore(point: HoldPoint, note: Note, all: readonly Evidence[], item?: CodeItem, answer?: Answer): Finding {
  const parts = partsOf(point, note.data);
  const covered = coveredOn(point.before, note);
  const place = placeOfField(note, ['stages', covered?.stage ?? point.before]);
  const of = item && weakest(item.rests.basis, item.applies?.basis ?? 'own-copy');
  const base = {
    ...rests,
    ...(of ? { basis: of, marks: marksOf({ basis: of, status: item.rests.status }) } : {}),
    id: `${note.name}/${point.id}/hold-point`,
    note: note.name,
    subject: point.id,
    item: item?.id ?? 'hold-point',
    point: point.id,
    title: point.shows,
    place,
  } as const;
  if (answer?.because && isNotApplicable(answer.answer))
    return { ...base, of: 'proof', outcome: 'not-applicable', says: answer.because, answer: answer.answer };
  if (answer && saysNo(answer.answer))
    return {
      ...base,
      of: 'proof',
      outcome: 'not-shown',
      says: `answered \`${answer.answer}\`${answer.because ? `; ${answer.because}` : ''}`,
      todo: todoFor(point, partsOf(point, note.data), all, covered),
      answer: answer.answer,
    };

  const naming = all.map((evidence) => ({ evidence, ...namedOf(point, parts, evidence) }));
  const tried = naming.flatMap(({ evidence, parts: told }) =>
    told.map((part) => ({ evidence, part, refused: refusal(point, evidence, note, part, covered?.on, item) })),
  );
  const accepted = tried.flatMap(({ evidence, part, refused }) => (refused ? [] : [{ evidence, parts: [part] }]));
  const proof = shownParts(parts, accepted);
  const missing = missingOf(proof);
  const days = [...new Set(accepted.flatMap(({ evidence }) => evidence.on ?? []))].sort();
  const made = accepted.every(({ evidence }) => evidence.is === 'photo') ? 'photographed' : 'recorded';
  const shown = `${made} on ${days.join(', ')}`;
  if (missing.length === 0) {
    return {
      ...base,
      of: 'proof',
      outcome: 'seen',
      says: covered ? `${shown}, \`${covered.stage}\` on ${covered.on}` : `${shown}, not covered yet`,
      place: accepted[0]!.evidence.place,
      proof,
    };
  }
  const refused = tried.flatMap((t) => (t.refused && missing.includes(t.part) ? [t.refused] : []));
  const late = refused.find((r) => r.is === 'late');
  if (late)
    return {
      ...base,
      of: 'date',
      outcome: 'out-of-order',
      says: late.says,
      todo: 'name the photo that was taken before it was covered, or correct the date',
      place: late.evidence.place,
      related: { place, says: `\`${covered!.stage}\` is dated here` },
      proof,
    };
  const undated = refused.find((r) => r.is === 'undated');
  const unsaid = naming.find((n) => n.unsaid && !isOfAnotherStage(point, n.evidence))?.evidence;
  const list = missing.filter((part) => part !== '');
  const lacks = list.length > 0 ? `not shown: ${list.join(', ')}` : undefined;
  const reasons = [...new Set(refused.map((r) => r.says))];
  const open = { ...base, of: 'proof' as const, proof };
  if (undated)
    return {
      ...open,
      outcome: 'part-missing',
      says: [undated.says, lacks].filter(Boolean).join('; '),
      todo: undated.evidence.is === 'photo' ? 'add `taken-on:` to the photo' : 'add `dated:` to the document',
      place: undated.evidence.place,
    };
  if (accepted.length > 0)
    return {
      ...open,
      outcome: 'part-missing',
      says: [`${shown}; ${lacks}`, ...reasons].join('; '),
      todo: todoFor(point, missing, all, covered),
      place: accepted[0]!.evidence.place,
    };
  const none = covered
    ? `\`${covered.stage}\` since ${covered.on}, and no photo names it`
    : `still to be recorded in the stage \`${point.during}\`, before it is ${point.before}`;
  const which = unsaid && `${showName(unsaid)} does not say which of ${list.join(', ')} it shows`;
  return {
    ...open,
    outcome: 'not-shown',
    says: [...(reasons.length > 0 || which ? reasons : [none]), ...(which ? [which] : [])].join('; '),
    todo: todoFor(point, missing, all, covered),
    place: refused[0]?.evidence.place ?? unsaid?.place ?? place,
  };
}

function refusal(
  point: HoldPoint,
  evidence: Evidence,
  note: Note,
  part: string,
  coveredDay: string | undefined,
  item: CodeItem | undefined,
): Refused | undefined {
  const name = showName(evidence);
  const covered = coveredOn(point.before, note);
  if (evidence.is === 'paper') {
    if (item?.kind !== 'evidence' || !item.evidence.includes('paper'))
      return { is: 'form', evidence, says: `${name} is no photo` };
    const another = ofAnother(evidence.of, note, part, point.during === 'as-received');
    if (another) return { is: 'other', evidence, says: `${name} ${another}` };
    const begun = point.during === 'as-received' ? undefined : note.data.stages?.[point.during];
    if (evidence.on !== undefined && begun !== undefined && evidence.on < begun)
      return {
        is: 'early',
        evidence,
        says: `${name} is of ${evidence.on}, before \`${point.during}\` on ${begun}`,
      };
  }
  if (isOfAnotherStage(point, evidence))
    return {
      is: 'stage',
      evidence,
      says: `${name} is of the stage \`${evidence.stage}\`, not \`${point.during}\``,
    };
  if (evidence.on === undefined)
    return {
      is: 'undated',
      evidence,
      says: `${name} does not say when it was ${evidence.is === 'photo' ? 'taken' : 'made'}`,
    };
  if (coveredDay !== undefined && evidence.on > coveredDay)
    return {
      is: 'late',
      evidence,
      says: `${name} for \`${point.id}\` was ${evidence.is === 'photo' ? 'taken' : 'made'} on ${evidence.on}, after \`${covered!.stage}\` on ${coveredDay}`,
    };
  return undefined;
}

const isOfAnotherStage = (point: HoldPoint, { stage }: Evidence): boolean =>
  stage !== undefined && !isInStage(point, stage);

/** A photo may be of any stage from the one in which the evidence is made to the last before it is covered. */
export function isInStage({ during, before }: Pick<HoldPoint, 'during' | 'before'>, stage: Stage): boolean {
  const at = (one: Stage) => stageNames.indexOf(one);
  return at(stage) >= at(during) && at(stage) < at(before);
}

/** What to name or to photograph; photos of the stage that could show it are named. */
function todoFor(
  point: HoldPoint,
  missing: readonly string[],
  all: readonly Evidence[],
  covered: { stage: string; on: string } | undefined,
): string {
  const name = provesText(point.id, missing);
  const could = all.filter(
    (e) =>
      e.is === 'photo' &&
      e.stage === point.during &&
      (!covered || !e.on || e.on <= covered.on) &&
      !e.names.some((n) => n.proof === point.id),
  );
  const list = could.map((e) => `\`${e.file.split('/').at(-1)}\``).slice(0, 4);
  const candidates =
    list.length > 0
      ? `${could.length === 1 ? 'photo' : 'photos'} ${list.join(', ')} of stage \`${point.during}\`: if it shows this, add ${name}`
      : undefined;
  if (candidates) return candidates;
  if (covered)
    return `add ${name} to an earlier photo that shows it, or agree with the certifier on opening it or on another proof`;
  return `photograph it and add ${name}: ${point.shows}`;
}
