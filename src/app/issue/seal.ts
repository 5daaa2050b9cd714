import { spawnSync } from 'node:child_process';
import { createTag, removeTag } from '../../history/git/create-tag.js';
import { command, type GitFolder } from '../../history/git/run.js';
import type { Tag } from '../../history/git/tags.js';
import type { Manifest } from '../../history/manifest.js';
import { tagMessage } from '../../history/tag-message.js';
import { MachineFailure } from '../../platform/failure.js';
import { onInterrupt } from '../../platform/interrupt.js';
import type { Standing } from '../repository/standing.js';

/**
 * Lets `publish` print the document of a standing with an issue, and tags its commit as the last step. The tag names the
 * printed file by its digest. Whatever fails or interrupts, no tag stays.
 */
export async function sealWithTag<T>(
  { repo, commit, issue }: Standing,
  title: string,
  requireSignature: boolean,
  publish: (seal: (manifest: Manifest) => Promise<void>) => Promise<T>,
): Promise<T> {
  const name = issue!.tag;
  let made: Tag | undefined;
  let message = '';
  const forget = onInterrupt(() => {
    if (message !== '') dropAtOnce(repo, name, message);
  });
  try {
    return await publish(async (manifest) => {
      const pdf = manifest.outputs!.find((file) => file.path.endsWith('.pdf'))!;
      message = tagMessage(manifest, title, pdf);
      const tag = await createTag(repo, {
        name,
        message,
        commit,
        sign: requireSignature ? 'require' : 'if-set-up',
      }).catch(refused);
      made = tag;
      if (tag.signed !== issue!.signed)
        refused(
          new Error(
            `git was set up otherwise while the document was printed, which says that the tag is ${issue!.signed ? 'signed' : 'not signed'}`,
          ),
        );
    });
  } catch (error) {
    if (made) await removeTag(repo, made);
    throw error;
  } finally {
    forget();
  }
}

function refused(cause: Error): never {
  throw new MachineFailure({
    found: cause.message.replace(/\.$/, ''),
    expected: 'a tag on the commit that was printed',
    todo: 'put that right and issue it again; no tag stays, and the last output is untouched',
    cause,
  });
}

/** While the process ends there is no waiting. A tag of that name with another message is somebody else's. */
export function dropAtOnce(repo: GitFolder, name: string, message: string): void {
  const git = (...args: string[]) => {
    const run = command(repo, args);
    return spawnSync('git', run.args, { env: run.env, encoding: 'utf8', timeout: 10_000 }).stdout;
  };
  if (git('for-each-ref', '--format=%(contents)', `refs/tags/${name}`).startsWith(message))
    git('update-ref', '-d', `refs/tags/${name}`);
}
