import { fieldTree, leaves } from '../../project/field-tree.js';
import type { Build } from '../../project/model.js';
import type { CodeItem } from '../codes/codes.js';
import type { Evaluation } from '../engine/examine.js';
import { isOpen } from '../engine/finding.js';
import { holdPointsOf } from '../engine/kind.js';
import type { Planned } from './asked.js';

/** What the certifier is asked before anything is cut. */
export interface Question {
  about: 'stop' | 'steel' | 'load-case' | 'release';
  /** Note, kind or load case that it concerns. */
  of: string;
  asks: string;
  item?: string | undefined;
}

export function questionsOf(
  build: Build,
  planned: readonly Planned[],
  items: readonly CodeItem[],
  evaluation: Evaluation,
): Question[] {
  return [
    ...stops(items, planned, evaluation),
    ...steels(items, planned, evaluation),
    ...loadCases(build, planned, evaluation),
    ...holds(planned),
  ];
}

/** Items that stop a note, unless they are answered as the code wants. */
function stops(items: readonly CodeItem[], planned: readonly Planned[], { findings }: Evaluation): Question[] {
  return items.flatMap((item): Question[] => {
    if (item.kind !== 'answer' || item.stop !== true) return [];
    const found = findings.filter((f) => f.item === item.id);
    if (found.length > 0 && found.every((f) => !isOpen(f))) return [];
    const against = found.find((f) => f.outcome === 'requirement-not-met' || f.outcome === 'contradicted');
    return [
      {
        about: 'stop',
        of: whose(item, planned),
        asks: against
          ? `${item.title}: ${against.says}`
          : `${item.asks} Any other answer than \`${item.wants}\` stops the work until you have decided.`,
        item: item.id,
      },
    ];
  });
}

function steels(items: readonly CodeItem[], planned: readonly Planned[], { findings }: Evaluation): Question[] {
  const item = items.find((i) => i.id === 'body.steel-known');
  if (!item) return [];
  const found = findings.filter((f) => f.item === item.id);
  if (found.length > 0 && found.every((f) => !isOpen(f))) return [];
  return [
    {
      about: 'steel',
      of: whose(item, planned),
      asks:
        found[0]?.outcome === 'unanswered' && found[0].answer === undefined && /not known:/.test(found[0].says)
          ? `How is it to be assessed? ${found[0].says}`
          : item.asks,
      item: item.id,
    },
  ];
}

/** Load cases that nobody has agreed to, those that notes name in vain, and kinds that need one. */
function loadCases(build: Build, planned: readonly Planned[], { findings }: Evaluation): Question[] {
  const open = (build.data['load-cases'] ?? []).filter(
    (c) => c['agreed-with'] === undefined || c['agreed-on'] === undefined,
  );
  const without = findings.filter((f) => f.marks.includes('capacity only'));
  const named = planned.filter(
    (p) => p.note === undefined && leaves(fieldTree(p.kind.shape)).some(({ path }) => path.at(-1) === 'load-case'),
  );
  return [
    ...open.map(
      (c): Question => ({
        about: 'load-case',
        of: c.id,
        asks: `Do you agree to the load case ${c.id} (${c.says}), and from which day?`,
      }),
    ),
    ...without.map(
      (f): Question => ({
        about: 'load-case',
        of: f.note,
        asks: `Which load case holds for ${f.subject || f.note} (${f.title})? ${f.says}`,
        item: f.item,
      }),
    ),
    ...named.map(
      ({ kind }): Question => ({
        about: 'load-case',
        of: kind.id,
        asks: `Which load cases, with which factors, hold for ${kind.title.toLowerCase()}?`,
      }),
    ),
  ];
}

/** Hold points want a visit or another word before work goes on. */
function holds(planned: readonly Planned[]): Question[] {
  return planned.flatMap(({ kind, note }) =>
    holdPointsOf(kind, note)
      .filter((p) => p.level === 'hold')
      .map(
        (p): Question => ({
          about: 'release',
          of: note?.name ?? kind.id,
          asks: `How do you release the hold point \`${p.id}\` before it is ${p.before}: by a visit, or by photos of what is shown (${p.shows})?`,
        }),
      ),
  );
}

function whose(item: CodeItem, planned: readonly Planned[]): string {
  return planned
    .filter((p) => p.asked.some((a) => a.item.id === item.id && a.leftOut === undefined))
    .map((p) => p.note?.name ?? p.kind.id)
    .join(', ');
}
