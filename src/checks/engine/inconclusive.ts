import { type Finding, isOpen, resultOf } from './finding.js';

/** Inconclusive findings that one measurement or test would settle. */
export interface SettledTogether {
  /** What would settle all of them, any one; none where no one thing settles the findings. */
  by: readonly string[];
  findings: readonly Finding[];
}

/** Open findings that are inconclusive. */
export const inconclusiveOf = (findings: readonly Finding[]): Finding[] =>
  findings.filter((f) => isOpen(f) && resultOf(f.outcome) === 'unclear');

/**
 * Groups findings by what would settle them: the one thing that settles most of them first, then that which settles most of
 * the rest. Each finding is in one group. What no one thing settles comes last, in one group.
 *
 * @param settlersOf what would settle a finding by itself, in words; the same words are the same thing
 */
export function groupsBySettler(
  findings: readonly Finding[],
  settlersOf: (finding: Finding) => readonly string[],
): SettledTogether[] {
  const known = new Map(findings.map((f) => [f, new Set(settlersOf(f))]));
  const groups: SettledTogether[] = [];
  let rest = findings.filter((f) => known.get(f)!.size > 0);
  while (rest.length > 0) {
    const settled = new Map<string, Finding[]>();
    for (const f of rest) for (const by of known.get(f)!) settled.set(by, [...(settled.get(by) ?? []), f]);
    const most = [...settled.values()].reduce((a, b) => (b.length > a.length ? b : a));
    const alike = (of: readonly Finding[]) => of.length === most.length && of.every((f, i) => f === most[i]);
    groups.push({ by: [...settled].filter(([, of]) => alike(of)).map(([by]) => by), findings: most });
    rest = rest.filter((f) => !most.includes(f));
  }
  const open = findings.filter((f) => known.get(f)!.size === 0);
  return open.length > 0 ? [...groups, { by: [], findings: open }] : groups;
}
