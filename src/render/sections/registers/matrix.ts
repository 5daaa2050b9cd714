import { h } from 'hastscript';
import type { Element } from 'hast';
import { measuredIn } from '../../../build/measured-in.js';
import type { Finding } from '../../../checks/finding.js';
import { shownBy } from '../../../checks/shown.js';
import { anchor, joined, label, pointer } from '../../anchors.js';
import { itemCode } from '../../item.js';
import { fieldPointer } from '../../origin.js';
import { outcomeMark } from '../../outcome.js';
import { evidenceOf } from '../../shown.js';
import type { Subject } from '../../subject.js';
import { table } from '../../table.js';
import { keyOf, servedBy, traceOf } from '../../trace.js';
import { isBlank } from '../answers.js';
import { grouped } from '../findings.js';
import { findingPointer } from '../open-items.js';

/** From each item of the code to what shows it, and back: what was measured and serves no item is listed as information. */
export function matrix(subject: Subject): Element {
  const { evaluation } = subject;
  const order = new Map(evaluation.raised.map(({ item }, i) => [item.id, i]));
  const at = (f: Finding) => order.get(f.item) ?? order.size;
  const kept = evaluation.findings.filter((f) => f.outcome !== 'notApplicable' && !(isBlank(f) && !f.run)).sort((a, b) => at(a) - at(b));
  const bare = evaluation.findings.filter((f) => f.outcome !== 'notApplicable' && !kept.includes(f));
  return h('section.landscape', { id: anchor.section('matrix') }, [
    h('h2', 'Traceability'),
    table('matrix', 'From each item to finding and outcome, measured fields, sheets, photos and papers', [['Item', 17], ['Findings and their outcomes', 31], ['Measured', 20], ['Sheets', 20], ['Photos, papers', 12]], rowsOf(kept, subject), { id: 'traceability' }),
    ...(bare.length > 0 ? [h('p', [`${bare.length} findings have no record yet; they stand under `, pointer(anchor.section('open'), 'open items'), '.'])] : []),
    ...information(subject),
  ]);
}

/** Findings of one item that rest on the same records share a row. */
function rowsOf(findings: readonly Finding[], subject: Subject): (Element | string)[][] {
  const traced = findings.map((f) => {
    const trace = traceOf(f, subject.evaluation);
    return { f, ...trace, shown: pictures(f, trace.fields.map(keyOf), subject) };
  });
  const key = ({ f, fields, runs, shown }: (typeof traced)[number]) => [f.item, fields.map(keyOf), runs, shown.map((p) => p.properties['href'])].join('\n');
  return grouped(traced, key).map((alike) => [
    itemCode(alike[0].f.item, subject),
    cell(alike.map(({ f }) => h('span', [findingPointer(f), ' ', outcomeMark(f)]))),
    cell(alike[0].fields.map((place) => fieldPointer(place, subject))),
    cell(alike[0].runs.map((run) => pointer(anchor.sheet(run), label.sheet(run).replace(/^sheet /, '')))),
    cell(alike[0].shown),
  ]);
}

const cell = (of: readonly (Element | string)[]): Element | string => (of.length > 0 ? h('span', joined(of, h('br'))) : '–');

/** Evidence of the item, and photos of the measured values that the finding rests on. */
function pictures(f: Finding, fields: readonly string[], subject: Subject): Element[] {
  const { build, rules } = subject;
  const note = build.notes.find((n) => n.name === f.note);
  const ofValues = build.notes.flatMap((n) => measuredIn(n.data).flatMap((m) => (m.photo !== undefined && fields.includes(keyOf(m.at)) ? shownBy(`photo ${m.photo}`, n, build, []) : [])));
  const during = f.item === 'hold-point' && note ? rules.kinds.get(note.kind)!.holdPoints.find((p) => p.id === f.subject)?.during : undefined;
  const photos = [...ofValues.flatMap((s) => (s.is === 'photo' ? [{ note: s.note, file: s.file }] : [])), ...(note?.data.photos ?? []).flatMap((p) => (during !== undefined && p.stage === during ? [{ note: note!, file: p.file }] : []))];
  const all = [...evidenceOf(f, subject), ...photos.map((p) => pointer(anchor.photo(`${p.note.name}/${p.file}`), label.photo(p.note.name, p.file)))];
  return [...new Map(all.map((e) => [String(e.properties['href']), e])).values()];
}

/** Measured values that no finding rests on. */
function information(subject: Subject): Element[] {
  const served = servedBy(subject.evaluation);
  const rows = subject.build.notes.flatMap((note) => {
    const idle = measuredIn(note.data).filter((m) => !served.has(keyOf(m.at)));
    return idle.length > 0 ? [h('li', [pointer(anchor.note(note.name), label.note(note.name)), ': ', ...joined(idle.map((m) => h('span', [h('code', m.at.path), ` ${m.quantity.text}`]))), '.'])] : [];
  });
  if (rows.length === 0) return [h('p', 'Every measured value serves an item of the code.')];
  return [h('p', [h('b', 'Measured for information. '), 'These values serve no item of the code:']), h('ul', rows)];
}

