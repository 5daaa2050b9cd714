import { type Checked, differs, listed, matches } from './checked.js';

interface Findings {
  findings: { id: string; outcome: string; says?: string }[];
}

/** The findings that the document carries against those of examining the commit again. */
export function checkFindings(carried: string, again: string): Checked {
  if (carried === again) return matches('findings', 'examining the notes again gives the same findings');
  const [before, now] = [parsed(carried), parsed(again)];
  if (!before || !now) return differs('findings', 'the attached findings cannot be read');
  const earlier = new Map(before.findings.map((f) => [f.id, f]));
  const list = now.findings.flatMap((f) => {
    const told = earlier.get(f.id);
    earlier.delete(f.id);
    if (!told) return [`${f.id} is not in the document; examined again it is ${f.outcome}`];
    if (told.outcome !== f.outcome)
      return [`${f.id} is ${told.outcome} in the document; examined again it is ${f.outcome} (${f.says ?? ''})`];
    if (JSON.stringify(told) !== JSON.stringify(f))
      return [`${f.id} reads “${told.says ?? ''}” in the document; examined again “${f.says ?? ''}”`];
    return [];
  });
  const gone = [...earlier.keys()].map((id) => `${id} is in the document, and not found when examined again`);
  const all = [...list, ...gone];
  return listed(
    'findings',
    '',
    'examining the notes again gives other findings',
    all.length > 0 ? all : ['their summary or order was altered'],
  );
}

function parsed(text: string): Findings | undefined {
  try {
    const data = JSON.parse(text) as Partial<Findings>;
    return Array.isArray(data.findings) ? (data as Findings) : undefined;
  } catch {
    return undefined;
  }
}
