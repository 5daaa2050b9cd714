import type { Answer } from '../../project/common.js';
import type { Note } from '../../project/model.js';
import type { CodeItem } from '../codes/codes.js';
import type { Judged } from './finding.js';

/** Whether a photo, a document or what an answer names shows what the item asks for. */
export function judgeEvidence(item: CodeItem & { kind: 'evidence' }, note: Note, answer: Answer | undefined): Judged {
  const photo = note.data.photos?.find((p) => p.serves?.includes(item.id));
  const paper = note.data.papers?.find((p) => p.serves?.includes(item.id));
  const word = answer?.answer;
  const because = answer?.because ? `; ${answer.because}` : '';
  const shown = photo
    ? `photo ${photo.id ?? photo.file}`
    : paper
      ? `document ${paper.id ?? paper.file}`
      : answer?.shown;
  const kindOf = photo ? 'photo' : paper ? 'paper' : answer?.shown?.split(' ')[0];
  const wanted = item.evidence.join(' or ').replaceAll('paper', 'document');
  const add = `add a ${wanted} with \`serves: [${item.id}]\``;
  if (word === 'no')
    return { result: 'missing', says: `answered \`no\`${because}; expected ${wanted}`, todo: add, answer: word };
  const fits = kindOf !== undefined && (item.evidence as readonly string[]).includes(kindOf);
  if (shown && fits) return { result: 'met', says: `shown by ${shown}${because}`, answer: word ?? shown };
  if (shown) return { result: 'missing', says: `shown by ${shown}, expected ${wanted}`, todo: add, answer: word };
  if (word)
    return {
      result: 'missing',
      says: `answered \`${word}\`, but nothing shows it; expected ${wanted}`,
      todo: `${add}, or \`shown:\` to the answer`,
      answer: word,
    };
  return { result: 'missing', says: `no ${wanted} for it`, todo: `add one with \`serves: [${item.id}]\`` };
}
