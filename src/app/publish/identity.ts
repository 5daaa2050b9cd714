import { createHash } from 'node:crypto';
import { stat } from 'node:fs/promises';
import { tool } from '../../platform/tool.js';
import type { Build } from '../../project/model.js';
import type { Identity } from '../../render/subject.js';
import type { InputHash } from '../repository/inputs.js';
import type { Standing } from '../repository/standing.js';

/** Which state of the files is printed. The same commit and tag give the same identity wherever and whenever that is. */
export async function identify(
  build: Build,
  inputs: readonly InputHash[],
  standing: Standing | undefined,
): Promise<Identity> {
  const digest = createHash('sha256')
    .update(inputs.map((i) => `${i.sha256}  ${i.path}\n`).join(''))
    .digest('hex');
  if (!standing) return { tool, date: await newestInput(build), dirty: [], inputs: digest };
  const { commit, date, dirty, issue } = standing;
  return {
    tool,
    commit,
    date,
    dirty,
    inputs: digest,
    ...(issue ? { letter: issue.letter, tag: issue.tag, signature: issue.signed ? signed : unsigned } : {}),
  };
}

/** Whose key it is, and whether it fits, depends on who asks: that is for `gusset verify` to say, not for the document. */
const signed = 'signed; `gusset verify` tells by whose key and whether it fits';
const unsigned = 'not signed: it proves neither who made this issue nor when';

async function newestInput(build: Build): Promise<string> {
  const times = await Promise.all(build.inputs.map(async (i) => (await stat(i.absolute)).mtimeMs));
  return new Date(Math.max(0, ...times)).toISOString().slice(0, 10);
}
