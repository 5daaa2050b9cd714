import type { Codes } from '../codes/codes.js';
import { type Finding, isOpen } from './finding.js';

/** What an answer waits for that leads to other items. */
export const followed = 'to be followed';

type Links = Pick<Codes, 'leadsTo'>;

/**
 * An answer that leads to other items is settled when they are: each is there, and none of them is open. One that closes
 * may close another, so the trails are followed until none closes.
 */
export function followTrails(findings: readonly Finding[], codes: Links): Finding[] {
  const now = step(findings, codes);
  const closed = (list: readonly Finding[]): number => list.filter((f) => !isOpen(f)).length;
  return closed(now) > closed(findings) ? followTrails(now, codes) : now;
}

function step(findings: readonly Finding[], codes: Links): Finding[] {
  const of = new Map<string, Finding[]>();
  for (const f of findings) of.set(f.item, [...(of.get(f.item) ?? []), f]);
  return findings.map((finding) => {
    if (finding.waits !== followed || finding.stop) return finding;
    const links = codes.leadsTo(finding.item);
    if (links.length === 0) return finding;
    const open = links
      .filter((l) => (of.get(l.item.id) ?? []).length === 0 || of.get(l.item.id)!.some(isOpen))
      .map((l) => l.item.id);
    if (open.length === 0)
      return { ...finding, waits: undefined, says: `${finding.says}, which are settled`, todo: undefined };
    return { ...finding, todo: `settle ${open.join(', ')}` };
  });
}
