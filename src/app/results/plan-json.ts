import type { Limit } from '../../checks/codes/limit.js';
import type { Plan } from '../../checks/plan/plan.js';
import { jsonForm } from '../../project/format.js';
import type { Build } from '../../project/model.js';
import { toUnit } from '../../units/unit.js';

/** The stable form of a plan; numbers stand in the unit that is named beside them. */
export function planJson(build: Build, plan: Plan) {
  return {
    form: jsonForm('plan'),
    build: build.name,
    title: build.data.title,
    kinds: plan.kinds,
    sections: plan.sections,
    limits: plan.limits.map(({ findings, limit, ...rest }) => ({
      ...rest,
      ...(limit ? { limit: limitJson(limit) } : {}),
      findings: findings.map((f) => ({ id: f.id, subject: f.subject, outcome: f.outcome, says: f.says })),
    })),
    figures: plan.figures,
    leftOut: plan.leftOut,
    sheets: plan.sheets,
    baseline: plan.baseline,
    points: plan.points.map(({ kind, note, id, shows, parts, level, during, before }) => ({
      kind,
      note,
      id,
      shows,
      parts,
      level,
      during,
      before,
    })),
    tests: plan.tests,
    questions: plan.questions,
  };
}

function limitJson(limit: Limit) {
  const shown = (si: number | undefined) =>
    si === undefined ? undefined : Number(toUnit(si, limit.unit).toPrecision(12));
  const { document, edition, clause, basis, status, readBy, on } = limit;
  return {
    min: shown(limit.min?.si),
    max: shown(limit.max?.si),
    minExclusive: limit.min?.strict || undefined,
    maxExclusive: limit.max?.strict || undefined,
    unit: limit.unit,
    recommended: limit.recommended || undefined,
    document,
    edition,
    clause,
    basis,
    status,
    readBy,
    on,
  };
}
