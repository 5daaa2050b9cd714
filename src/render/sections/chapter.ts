import { h } from 'hastscript';
import type { Element } from 'hast';
import { stageNames, stages } from '../../build/common.js';
import type { Measured } from '../../build/fields.js';
import type { Note } from '../../build/model.js';
import { expanded } from '../../calc/value.js';
import type { Finding } from '../../checks/finding.js';
import { cautions } from '../../checks/kind.js';
import { valueOf } from '../../checks/values.js';
import { showQuantity } from '../../units/show.js';
import { anchor, noteNumber, pointer } from '../anchors.js';
import { limitText } from '../limit-text.js';
import { outcomeMark } from '../outcome.js';
import type { Subject } from '../subject.js';
import { table } from '../table.js';
import { words } from '../words.js';
import { photoFigure } from './photos.js';
import { queriesAbout } from './queries.js';
import { sheetSection } from './sheet.js';

/** One note: its words, measurements, findings, calculation sheets and photos. */
export function chapter(note: Note, subject: Subject): Element {
  const { evaluation, rules } = subject;
  const kind = rules.kinds.get(note.kind)!;
  const findings = evaluation.findings.filter((f) => f.note === note.name);
  const runs = evaluation.runs.filter((r) => r.id.startsWith(`${note.name}/`));
  const photos = note.data.photos ?? [];
  return h('section.chapter', { id: anchor.note(note.name) }, [
    h('h2', `Note ${noteNumber(note.name)}: ${note.data.title}`),
    h('p.chapter-facts', facts(note, kind.title, subject)),
    ...(kind.cautions.length > 0 ? [h('aside.cautions', [h('b', 'Cautions. '), kind.cautions.map((c) => cautions[c]).join(' ')])] : []),
    h('div.words', words(note, subject)),
    ...queriesAbout(note, subject),
    measurements(note, subject),
    ...(findings.length > 0 ? [h('h3', 'Findings'), findingsTable(note, findings, subject)] : []),
    ...(runs.length > 0 ? [h('h3', 'Calculation sheets'), ...runs.map((r) => sheetSection(r, subject))] : []),
    ...(photos.length > 0 ? [h('h3', 'Photos'), h('div.photos', photos.map((p) => photoFigure(p, note, subject)))] : []),
  ]);
}

function facts(note: Note, kind: string, subject: Subject): string {
  const by = subject.build.data.people?.find((p) => p.id === note.data.by)?.name ?? note.data.by;
  const dated = stageNames.flatMap((s) => (note.data.stages?.[s] ? [`${stages[s].split(',')[0]} ${note.data.stages[s]}`] : []));
  return [kind, by && `by ${by}`, note.data['load-state'] && `load state: ${note.data['load-state']}`, ...dated].filter(Boolean).join(' · ');
}

/** All measured values of the note, in the order of its frontmatter. */
function measurements(note: Note, subject: Subject): Element {
  const rows = measuredIn(note.data).map((m) => {
    const value = valueOf(m, subject.build);
    const by = [m.with && `with ${m.with}`, m.by && `by ${m.by}`, m.on && `on ${m.on}`, m.quantity.readings && `${m.quantity.readings.length} readings`].filter(Boolean).join(', ');
    const shown = m.direction ? m.quantity.text : showQuantity(value.si, value.unit, value.assumed.size > 0 ? 0 : expanded(value));
    const u = value.assumed.size > 0 ? `± ${showQuantity(expanded(value), value.unit)} assumed` : m.direction ? `± ${showQuantity(expanded(value), value.unit)}` : '';
    return [h('code', m.at.path), m.quantity.text, [shown === m.quantity.text ? '' : shown, u].filter(Boolean).join(' '), by || '—'];
  });
  if (rows.length === 0) return h('p.no-measurements', 'No measurements in this note.');
  return h('div', [h('h3', 'Measurements'), table('measurements', `Measurements of note ${noteNumber(note.name)}`, ['Field', 'As written', 'As used', 'How'], rows)]);
}

export function measuredIn(value: unknown): Measured[] {
  if (Array.isArray(value)) return value.flatMap(measuredIn);
  if (typeof value !== 'object' || value === null) return [];
  if ('quantity' in value && 'at' in value) return [value as Measured];
  return Object.values(value).flatMap(measuredIn);
}

function findingsTable(note: Note, findings: readonly Finding[], subject: Subject): Element {
  const name = (f: Finding) => h('span', { id: anchor.finding(f.id) }, [f.title, ...(f.subject ? [h('br'), h('code', f.subject)] : [])]);
  const rows = findings.map((f) => [
    name(f),
    h('span', [f.measured ? showQuantity(f.measured.si, f.limit?.unit ?? f.measured.unit, expanded(f.measured)) : (f.answer ?? '—'), ...(f.run && subject.evaluation.runs.some((r) => r.id === f.run) ? [h('br'), pointer(anchor.sheet(f.run), 'sheet')] : [])]),
    h('span', limitText(f)),
    h('span', [outcomeMark(f), h('br'), h('span.says', f.says), ...(f.todo ? [h('br'), h('b', `To do: ${f.todo}.`)] : []), ...concession(f)]),
  ]);
  return table('findings', `Findings of note ${noteNumber(note.name)}`, ['Check', 'Measured or answered', 'Limit and basis', 'Outcome'], rows);
}

function concession(f: Finding): (Element | string)[] {
  if (!f.concession) return [];
  const { word, because, condition, by, on } = f.concession;
  return [h('br'), h('span.concession', `Concession ${word.replace('-', ' ')}${by ? ` by ${by}` : ''}${on ? ` on ${on}` : ''}: ${because}${condition ? `; on condition: ${condition}` : ''}.`)];
}
