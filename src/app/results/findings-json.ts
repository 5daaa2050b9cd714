import { posix } from 'node:path';
import { expanded } from '../../calc/value.js';
import { ruleOf } from '../../checks/codes/limit.js';
import type { Doubt } from '../../checks/engine/doubts.js';
import type { Evaluation } from '../../checks/engine/examine.js';
import { countsByClass, type Finding } from '../../checks/engine/finding.js';
import { jsonForm } from '../../project/format.js';
import type { Build } from '../../project/model.js';
import type { ObsoleteUse } from '../../project/translate.js';
import { differenceUnit, toUnit } from '../../units/unit.js';

/** The stable, documented form of the findings; numbers stand in the unit that is named beside them, files within the build. */
export function findingsJson(build: Build, evaluation: Evaluation) {
  const within = (file: string) => posix.relative(posix.dirname(build.file), file);
  return {
    form: jsonForm('findings'),
    build: build.name,
    title: build.data.title,
    counts: Object.fromEntries(
      countsByClass(evaluation.findings).map(({ of, counts }) => [
        of,
        Object.fromEntries(counts.map(({ outcome, count }) => [outcome, count])),
      ]),
    ),
    inconclusive:
      evaluation.settledTogether.length > 0
        ? evaluation.settledTogether.map(({ by, findings }) => ({ settledBy: by, findings: findings.map((f) => f.id) }))
        : undefined,
    findings: evaluation.findings.map((f) => findingJson(f, within)),
    doubts: evaluation.doubts.length > 0 ? evaluation.doubts.map((d) => doubtJson(d, within)) : undefined,
    obsolete: build.obsolete.length > 0 ? build.obsolete.map((use) => obsoleteJson(use, within)) : undefined,
    unread: build.unread.length > 0 ? build.unread : undefined,
  };
}

const doubtJson = ({ note, place, found, expected, hint }: Doubt, within: (file: string) => string) => ({
  note,
  found,
  expected,
  hint,
  location: { file: within(place.file), line: place.line, column: place.column, field: place.path },
});

const obsoleteJson = ({ found, now, row, ...use }: ObsoleteUse, within: (file: string) => string) => ({
  found,
  now,
  since: row.since,
  location: { file: within(use.file), line: use.line, column: use.column, field: use.path.join('.') },
});

function findingJson(f: Finding, within: (file: string) => string) {
  const unit = f.limit?.unit ?? f.measured?.unit;
  const shown = (si: number | undefined, as = unit) =>
    si === undefined || as === undefined ? undefined : plain(toUnit(si, as));
  const apart = unit && differenceUnit(unit);
  return {
    id: f.id,
    note: f.note,
    subject: f.subject || undefined,
    item: f.item,
    title: f.title,
    form: f.form,
    class: f.of,
    outcome: f.outcome,
    waits: f.waits,
    says: f.says,
    onlyIf: f.onlyIf,
    todo: f.todo,
    marks: f.marks.length > 0 ? f.marks : undefined,
    answer: f.answer,
    measured: f.measured && {
      value: shown(f.measured.si),
      unit,
      expandedUncertainty: shown(expanded(f.measured), apart),
      interval: f.measured.interval && [shown(f.measured.interval.low), shown(f.measured.interval.high)],
      uncertaintyAssumed: f.measured.assumed.size > 0,
      sheet: f.run,
    },
    limit: f.limit && {
      min: shown(f.limit.min?.si),
      max: shown(f.limit.max?.si),
      minExclusive: f.limit.min?.strict || undefined,
      maxExclusive: f.limit.max?.strict || undefined,
      rule: ruleOf(f.limit),
      unit,
      recommended: f.limit.recommended || undefined,
      document: f.limit.document,
      edition: f.limit.edition,
      clause: f.limit.clause,
      status: f.limit.status,
      readBy: f.limit.readBy,
      on: f.limit.on,
    },
    margin: shown(f.margin, apart),
    basis: f.basis,
    point: f.point,
    parts: f.proof?.map(({ part, by }) => ({ part: part || undefined, shownBy: by.map((b) => b.file) })),
    judgements: f.judgements?.map(({ place, ...judgement }) => ({
      ...judgement,
      location: { file: within(place.file), line: place.line, column: place.column },
    })),
    stop: f.stop || undefined,
    concession: f.concession,
    location: {
      file: within(f.place.file),
      line: f.place.line,
      column: f.place.column,
      field: f.place.path || undefined,
    },
    related: f.related && {
      file: within(f.related.place.file),
      line: f.related.place.line,
      column: f.related.place.column,
      says: f.related.says,
    },
  };
}

/** Twelve digits: more are the noise of binary fractions. */
const plain = (x: number): number => Number(x.toPrecision(12));
