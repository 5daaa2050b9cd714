import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Finding } from '../../checks/engine/finding.js';
import { cautions } from '../../checks/engine/kind.js';
import { stageNames } from '../../project/common.js';
import type { Note } from '../../project/model.js';
import { anchor, capitalised, label } from '../anchors.js';
import { nameFigures } from '../figures.js';
import { grouped } from '../grouped.js';
import type { Subject } from '../subject.js';
import { words } from '../words.js';
import { alsoSaid } from './also-said.js';
import { answersTable, blankList, isBlank } from './answers.js';
import { comparisonsTable, unmeasuredTable } from './findings.js';
import { photoFigures } from './photos.js';
import { queriesAbout } from './queries.js';
import { recordSection } from './record.js';
import { recordsTable } from './records.js';
import { sheetGroup } from './sheet.js';

/** One note: its words, what it records, findings, calculation sheets and photos. */
export function chapter(note: Note, subject: Subject): Element {
  const { evaluation, rules } = subject;
  const kind = rules.kinds.get(note.kind)!;
  const own = evaluation.findings.filter((f) => f.note === note.name);
  const runs = evaluation.runs.filter((r) => r.id.startsWith(`${note.name}/`));
  const photos = note.data.photos ?? [];
  return nameFigures(
    h('section.chapter', { id: anchor.note(note.name) }, [
      h('h2', [h('span.kicker', capitalised(label.note(note.name))), ' ', note.data.title]),
      facts(note, kind.title, subject),
      stageLine(note),
      ...(kind.cautions.length > 0
        ? [
            h('aside.cautions', { ariaLabel: `Cautions for ${label.note(note.name)}` }, [
              h('b', 'Cautions. '),
              kind.cautions.map((c) => cautions[c]).join(' '),
            ]),
          ]
        : []),
      h('div.words', words(note, subject, 2)),
      ...queriesAbout(note, subject),
      h('h3', 'Record'),
      ...recordSection(note, subject),
      ...findings(note, own, subject),
      ...(photos.length > 0 ? [h('h3', 'Photos'), photoFigures(note, subject)] : []),
      ...(runs.length > 0
        ? [
            h('h3', { id: anchor.sheets(note.name) }, 'Calculation sheets'),
            ...grouped(runs, (r) => r.sheet.id).flatMap((group) => sheetGroup(group, subject)),
          ]
        : []),
    ]),
  );
}

/** What does not apply stands in the checklist with its reason; here only what somebody judged of it. */
function findings(note: Note, own: readonly Finding[], subject: Subject): Element[] {
  const shown = own.filter((f) => f.outcome !== 'not-applicable' || f.judgements);
  const numbers = shown.filter((f) => f.form === 'limit' || f.form === 'test' || f.form === 'agreement');
  const answers = shown.filter((f) => f.form === 'answer' || f.form === 'evidence');
  const content = [
    ...comparisonsTable(
      note,
      numbers.filter((f) => !isBlank(f)),
      subject,
    ),
    ...unmeasuredTable(note, numbers.filter(isBlank), subject),
    ...recordsTable(
      note,
      shown.filter((f) => f.form === 'order'),
      subject,
    ),
    ...answersTable(note, answers, subject),
    ...blankList(answers, subject),
    ...alsoSaid(note, own, subject),
  ];
  return content.length > 0 ? [h('h3', 'Findings'), ...content] : [];
}

function facts(note: Note, kind: string, subject: Subject): Element {
  const by = subject.build.data.people?.find((p) => p.id === note.data.by)?.name ?? note.data.by;
  const entries: [string, string | undefined][] = [
    ['Kind', kind],
    ['Done by', by],
    ['Begun', note.data.started],
    ['State of load', note.data['load-state']],
    ['File', note.path],
  ];
  return h(
    'dl.chapter-facts',
    entries.flatMap(([name, value]) => (value ? [h('div', [h('dt', name), h('dd', value)])] : [])),
  );
}

/** The stages with their days, in the order in which they follow each other. */
function stageLine(note: Note): Element {
  const dated = stageNames.flatMap((s) => (note.data.stages?.[s] ? [{ stage: s, on: note.data.stages[s] }] : []));
  if (dated.length === 0) return h('p.stages.none', 'No stage of this work is dated.');
  return h(
    'ol.stages',
    dated.map(({ stage, on }) => h('li', [h('b', stage.replace('-', ' ')), ' ', on])),
  );
}
