import type { CodeItem, Codes } from '../../checks/codes/codes.js';
import { basisSays } from '../../checks/codes/limit.js';

/** The reference page of all items of the codes of practice. */
export function itemsPage(codes: Codes): string {
  return [
    '# Items of the codes of practice',
    '',
    'Made from `src/checks/codes/` by `npm run generate`. Everything is told in our own words; the text of a code governs.',
    'A figure without a confirmed source is asked of the builder, who types it into `limits.yaml` with clause and edition.',
    '',
    ...codes.codes.flatMap((code) => [
      `## ${code.title}`,
      '',
      ...(code.note ? [code.note, ''] : []),
      ...[...codes.items.values()].filter((i) => i.code === code.code).flatMap((i) => one(i, codes)),
    ]),
  ].join('\n');
}

function one(item: CodeItem, codes: Codes): string[] {
  const rests = [item.rests.document, item.rests.edition, item.rests.clause].filter(Boolean).join(', ');
  const bounds =
    'cases' in item
      ? item.cases.map(
          (c) =>
            ['min', 'max', 'above', 'below']
              .flatMap((b) => (c[b as 'min'] ? [`${b} ${c[b as 'min']}`] : []))
              .join(', ') ||
            (c['not-applicable'] ? `not applicable: ${c['not-applicable']}` : `to be read: ${c.figure}`),
        )
      : [];
  const leads = codes.leadsTo(item.id).map((l) => `\`${l.item.id}\` (${l.because})`);
  return [
    `### ${item.id}`,
    '',
    `**${item.title}.** ${item.asks}`,
    '',
    `- asked as ${item.kind}${'wants' in item ? `, wanted answer: ${item.wants}${item.stop ? '; another answer stops the note' : ''}` : ''}${'evidence' in item ? `: ${item.evidence.join(' or ')}${item.parts ? `, each of ${item.parts.join(', ')}` : ''}` : ''}${'unit' in item ? `, in ${item.unit === '1' ? 'a ratio' : item.unit}${item.recommended ? ', a recommendation' : ''}${item.rule ? `, decision rule ${item.rule}` : ''}` : ''}`,
    ...(bounds.length > 0 ? [`- figures: ${bounds.map((b) => `\`${b}\``).join('; ')}`] : []),
    ...('figure' in item && item.figure ? [`- to be read in the own copy: ${item.figure}`] : []),
    `- rests on ${rests} (${basisSays[item.rests.basis]}${item.rests.status ? `, ${item.rests.status.replace('-', ' ')}` : ''}${item.rests['read-in'] ? `; read in ${item.rests['read-in']}` : ''})`,
    `- raised by ${item['raised-by'].join(', ')}`,
    ...(leads.length > 0 ? [`- leads to ${leads.join(', ')}`] : []),
    '',
  ];
}
