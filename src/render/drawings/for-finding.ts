import type { Element } from 'hast';
import { expanded, spread } from '../../calc/value.js';
import type { Bound } from '../../checks/codes/limit.js';
import type { Finding } from '../../checks/engine/finding.js';
import { outcomeWord } from '../../checks/engine/outcome-words.js';
import { decide } from '../../checks/engine/verdict.js';
import { dotPlot } from './dot-plot.js';
import { figure } from './for-run.js';
import { limitScale } from './limit-scale.js';

/** Where the measured value of a finding lies in its limits; nothing where there is no number or no limit. */
export function drawingForFinding(finding: Finding): Element | undefined {
  const { measured, limit } = finding;
  if (!measured || !limit || (!limit.min && !limit.max)) return undefined;
  const { expanded: marginExpanded, rule } = decide(measured, limit);
  const bound = (of: Bound | undefined) => of && { si: of.si, strict: of.strict, expanded: expanded(of) };
  return figure(finding.id, {
    caption: `${named(finding)} against its limit.`,
    draw: (name, title) =>
      limitScale({
        name,
        title,
        value: measured.si,
        spread: rule === 'exact' ? 0 : spread(measured),
        marginExpanded: rule === 'as-read' ? undefined : marginExpanded,
        min: bound(limit.min),
        max: bound(limit.max),
        asRead: rule === 'as-read',
        recommended: limit.recommended,
        unit: limit.unit,
        outcomeWord: outcomeWord(finding),
      }),
  });
}

/** Fewer readings than this are as well shown one by one. */
const several = 3;

/**
 * Readings of one kind in one note that have the same limit, such as the clearance of each journal, in one drawing. Ratios
 * are left out: those of one item are of different things, and their sizes too far apart for one scale.
 */
export function drawingsForFindings(findings: readonly Finding[]): Element[] {
  const groups = new Map<string, Finding[]>();
  for (const f of findings) {
    if (!f.measured || !f.limit || f.subject === '' || f.limit.unit === '1') continue;
    const { min, max, unit } = f.limit;
    const key = JSON.stringify([f.note, f.item, min?.si, min?.strict, max?.si, max?.strict, unit]);
    groups.set(key, [...(groups.get(key) ?? []), f]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    const limit = first?.limit;
    if (!first || !limit || group.length < several) return [];
    return [
      figure([first.note, first.subject, first.item, 'all'].join('/'), {
        caption: `${first.title}: ${group.length} readings against one limit.`,
        draw: (name, title) =>
          dotPlot({
            name,
            title,
            says: first.title,
            unit: limit.unit,
            min: limit.min,
            max: limit.max,
            readings: group.map((f) => ({
              label: f.subject.replaceAll('-', ' '),
              si: f.measured!.si,
              spread: spread(f.measured!),
            })),
          }),
      }),
    ];
  });
}

const named = ({ title, subject }: Finding) => (subject ? `${title} (${subject})` : title);
