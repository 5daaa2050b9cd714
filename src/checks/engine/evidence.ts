import { type Answer, stageNames } from '../../project/common.js';
import type { Note } from '../../project/model.js';
import type { CodeItem } from '../codes/codes.js';
import type { Judged } from './finding.js';
import { ofAnother } from './of-another.js';
import { type Evidence, missingOf, named, provesText, showName, shownParts } from './proofs.js';
import { spellings } from './shown.js';
import { saysNo } from './told.js';

type Asked = Pick<CodeItem & { kind: 'evidence' }, 'id' | 'evidence' | 'after-work' | 'dated' | 'names-part'>;

/**
 * Whether photos, documents or what an answer names show what the item asks for.
 *
 * @param parts what each has to be shown by something; a note or sheet that an answer names shows the whole
 * @param all photos and documents that may name it, each with its note
 */
export function judgeEvidence(
  item: Asked,
  parts: readonly string[],
  all: readonly (Evidence & { from: Note })[],
  answer: Answer | undefined,
): Judged {
  const wanted = item.evidence.join(' or ').replaceAll('paper', 'document');
  const word = answer?.answer;
  const because = answer?.because ? `; ${answer.because}` : '';
  const shownIn = namedByAnswer(answer);
  const allowed: readonly string[] = item.evidence;
  const wholly = shownIn.some(({ kind }) => kind !== 'photo' && kind !== 'paper' && allowed.includes(kind));
  const pictured = shownIn.filter(({ kind }) => (kind === 'photo' || kind === 'paper') && allowed.includes(kind));
  const unfit = pictured.map((one) => unfitIn(one, item, all, wanted));
  const partly = unfit.some((why) => why === undefined);

  const naming = all.flatMap((evidence) =>
    evidence.names.flatMap((name) => (name.proof === item.id ? [{ evidence, told: named(parts, name.parts) }] : [])),
  );
  const tried = naming.flatMap(({ evidence, told }) =>
    told === 'unsaid' ? [] : told.map((part) => ({ evidence, part, refused: refusal(item, evidence, part, wanted) })),
  );
  const accepted = tried.flatMap(({ evidence, part, refused }) => (refused ? [] : [{ evidence, parts: [part] }]));
  const proof = shownParts(parts, accepted);
  const missing = missingOf(proof);
  const list = missing.filter((part) => part !== '');
  const name = provesText(item.id, missing);
  const todo = `add ${name} to a ${wanted} that shows it`;

  if (word !== undefined && saysNo(word))
    return { result: 'missing', says: `answered \`${word}\`${because}; expected ${wanted}`, todo, answer: word };
  const files = [...new Set(accepted.map(({ evidence }) => showName(evidence).replaceAll('`', '')))].join(', ');
  if (missing.length === 0) return { result: 'met', says: `shown by ${files}${because}`, answer: word ?? files, proof };
  if (wholly) return { result: 'met', says: `shown by ${answer!.shown}${because}`, answer: word ?? answer!.shown };
  if (partly && parts.length < 2)
    return { result: 'met', says: `shown by ${answer!.shown}${because}`, answer: word ?? answer!.shown };
  const reasons = [...new Set([...tried.flatMap((t) => t.refused ?? []), ...unfit.flatMap((why) => why ?? [])])];
  if (accepted.length > 0)
    return {
      result: 'partly',
      says: [`shown by ${files}; not shown: ${list.join(', ')}`, ...reasons].join('; '),
      todo,
      answer: word ?? files,
      proof,
    };
  const unsaid = naming.find((n) => n.told === 'unsaid')?.evidence;
  if (unsaid || partly)
    return {
      result: 'partly',
      says: `${unsaid ? showName(unsaid) : `\`${answer!.shown}\``} does not say which of ${parts.join(', ')} it shows`,
      todo: `say which, as ${name}`,
      answer: word,
      proof,
    };
  if (reasons.length > 0) return { result: 'missing', says: reasons.join('; '), todo, answer: word, proof };
  if (answer?.shown)
    return { result: 'missing', says: `shown by ${answer.shown}, expected ${wanted}`, todo, answer: word };
  if (word)
    return {
      result: 'missing',
      says: `answered \`${word}\`, but nothing shows it; expected ${wanted}`,
      todo: `${todo}, or \`shown:\` to the answer`,
      answer: word,
    };
  return {
    result: 'missing',
    says: `no ${wanted} for it${list.length > 0 ? `: ${list.join(', ')}` : ''}`,
    todo,
    proof,
  };
}

/** What an answer names as showing it: `paper balance-sheet` and the like. */
function namedByAnswer(answer: Answer | undefined): { kind: string; name: string }[] {
  return (answer?.shown ?? '').split(/\s*(?:[,;]|\band\b)\s*/).map((one) => {
    const [kind = '', ...name] = one.trim().split(/\s+/);
    return { kind: kind.toLowerCase(), name: name.join(' ') };
  });
}

/** Why what an answer names is not taken, as for what names the item itself; that it leads somewhere is checked apart. */
function unfitIn(
  { kind, name }: { kind: string; name: string },
  item: Asked,
  all: readonly (Evidence & { from: Note })[],
  wanted: string,
): string | undefined {
  const found = all.find((one) => one.is === kind && spellings(one).includes(name.replace(/^\d+[ /]/, '')));
  return found && refusal(item, found, '', wanted);
}

/** Why a photo or document that names the item is not taken for it. */
function refusal(item: Asked, evidence: Evidence & { from: Note }, part: string, wanted: string): string | undefined {
  const name = showName(evidence);
  const fits = item.evidence.includes(evidence.is) || (evidence.is === 'paper' && item.evidence.includes('drawing'));
  if (!fits) return `shown by ${name}, expected ${wanted}`;
  if (evidence.is === 'photo') return undefined;
  const another = ofAnother(evidence.of, evidence.from, part);
  if (another) return `${name} ${another}`;
  if (item['names-part'] && !evidence.of?.length)
    return `${name} does not say of what it is: state under \`of:\` the size, designation, material or part number that it names`;
  if ((item['after-work'] || item.dated) && evidence.on === undefined)
    return `${name} does not say of which day it is: state it under \`dated:\``;
  const begun = item['after-work'] ? begunOn(evidence.from) : undefined;
  return evidence.on !== undefined && begun !== undefined && evidence.on < begun
    ? `${name} is of ${evidence.on}, before the work of ${begun}`
    : undefined;
}

/** The earliest day of a stage after the car was received. */
function begunOn({ data }: Note): string | undefined {
  const days = stageNames.flatMap((stage) => (stage === 'as-received' ? [] : (data.stages?.[stage] ?? [])));
  return days.sort()[0];
}
