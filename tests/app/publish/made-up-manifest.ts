import { createHash } from 'node:crypto';

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');
/** A manifest that lists these files as printed. */
export const manifestOf = (outputs: Record<string, string>) =>
  JSON.stringify({
    form: 'gusset-manifest/2',
    tool: 'gusset 0.2.0',
    browser: 'any',
    pictures: 'any',
    document: 'wagon, draft',
    as: 'submission',
    photos: 'print',
    build: 'wagon',
    date: '2026-03-14',
    dirty: [],
    inputs: [],
    attachments: [],
    pages: [],
    content: sha256(''),
    outputs: Object.entries(outputs).map(([path, text]) => ({ path, bytes: text.length, sha256: sha256(text) })),
  });
