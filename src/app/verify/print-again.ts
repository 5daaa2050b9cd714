import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { commitDate } from '../../history/git/commits.js';
import { limitsOf } from '../../history/git/limits.js';
import type { Repository } from '../../history/git/repository.js';
import { signatureOf } from '../../history/git/tag-signature.js';
import { tagNamed } from '../../history/git/tags.js';
import type { Manifest } from '../../history/manifest.js';
import { withCache } from '../../platform/cache.js';
import { MachineFailure } from '../../platform/failure.js';
import { onInterrupt } from '../../platform/interrupt.js';
import { tool } from '../../platform/tool.js';
import { visible } from '../../platform/visible.js';
import { jsonForm } from '../../project/format.js';
import { type Loaded, load } from '../load.js';
import { withBuildAt } from '../repository/build-at.js';
import type { Standing } from '../repository/standing.js';
import { findingsJson } from '../results/findings-json.js';
import { type Checked, differs, unchecked } from './checked.js';
import { openDocument, type VerifiedDocument } from './document.js';
import { checkFindings } from './findings.js';
import { comparedOutputs, comparedPrints } from './printed.js';

/**
 * Examines the commit again and prints it again, and compares what comes of both with the document. Another
 * version of the program examines and prints otherwise, so that a difference would prove nothing: then neither is done.
 *
 * @param beside text of the manifest beside the document, where there is one
 */
export async function checkAgain(
  document: VerifiedDocument,
  repo: Repository,
  say: (says: string) => void,
  beside?: string,
): Promise<Checked[]> {
  const { manifest, attached } = document;
  if (manifest.dirty.length > 0) {
    const why = 'it was made of files that no commit holds, so that it cannot be made again';
    return [unchecked('findings', why), unchecked('print', why)];
  }
  const other = otherVersion(manifest);
  if (other !== undefined) return [unchecked('findings', other), unchecked('print', other)];
  const limits = limitsOf({ ...repo, detached: false, bare: false, empty: false, ignored: false });
  const printAt = (loaded: Loaded) =>
    limits.length > 0 ? [unchecked('print', limits.join(' '))] : printAgain(document, repo, loaded, say, beside);
  return withBuildAt(
    repo,
    { commit: manifest.commit!, prefix: manifest.folder!, name: manifest.build },
    async (folder) => {
      const loaded = await load(folder, folder);
      if (!('build' in loaded)) {
        const [first] = loaded.problems;
        const why = `the notes of the commit cannot be read (${visible(`${first?.file}: found ${first?.found}`)})`;
        return [unchecked('findings', why), unchecked('print', why)];
      }
      const again = `${JSON.stringify(findingsJson(loaded.build, loaded.evaluation), null, 2)}\n`;
      const findings = checkFindings(Buffer.from(attached.get('findings.json') ?? []).toString('utf8'), again);
      return [withInputs(findings, loaded, document), ...(await printAt(loaded))];
    },
  );
}

/** That another version made the document than the one that looks at it. */
function otherVersion({ tool: then, form }: Manifest): string | undefined {
  if (then === tool && form === jsonForm('manifest')) return undefined;
  const version = (of: string) => of.replace(/^gusset /, '');
  return `printed by version ${version(then)}; this is ${version(tool)}, and only the same version examines and prints the same`;
}

/** A file that the notes name and the manifest does not list has been left out of it. */
function withInputs(checked: Checked, { build }: Loaded, { manifest }: VerifiedDocument): Checked {
  const left = build.inputs.filter((input) => !manifest.inputs.some((i) => i.path === input.path));
  return left.length === 0
    ? checked
    : differs('findings', 'the manifest leaves out files that the notes rest on', [
        ...left.map((input) => input.path),
        ...checked.list,
      ]);
}

async function printAgain(
  document: VerifiedDocument,
  repo: Repository,
  loaded: Loaded,
  say: (says: string) => void,
  beside: string | undefined,
): Promise<Checked[]> {
  const { manifest } = document;
  const { publish } = await import('../publish/publish.js');
  const place = mkdtempSync(join(tmpdir(), 'gusset-verify-'));
  const remove = () => rmSync(place, { recursive: true, force: true, maxRetries: 3 });
  const forget = onInterrupt(remove);
  try {
    const standing = await standingThen(manifest, repo);
    // Nothing that was kept by an earlier print comes into this one.
    const done = await withCache(join(place, 'cache'), () =>
      publish(loaded, {
        as: manifest.as,
        photos: manifest.photos,
        out: join(place, 'again'),
        standing,
        progress: say,
      }),
    );
    if ('problems' in done)
      return [unchecked('print', `it cannot be printed again: ${visible(done.problems[0]?.found ?? '')}`)];
    const again = await openDocument(readFileSync(join(place, 'again', `${manifest.as}.pdf`)));
    if ('problem' in again) throw new Error(again.problem);
    return [...comparedPrints(document, again), ...comparedOutputs(document, done.manifest, beside)];
  } catch (error) {
    if (error instanceof MachineFailure) return [unchecked('print', `it cannot be printed again: ${error.found}`)];
    throw error;
  } finally {
    remove();
    forget();
  }
}

/** What git says of the commit, whatever the manifest does; only where the tag is not at hand the manifest's word is taken. */
async function standingThen({ commit, issue, tag, signed }: Manifest, repo: Repository): Promise<Standing> {
  const date = (await commitDate(repo, commit!)).slice(0, 10);
  const found = tag === undefined ? undefined : await tagNamed(repo, tag);
  const isSigned = found ? (await signatureOf(repo, found)) !== undefined : signed === true;
  const named = issue !== undefined && tag !== undefined ? { issue: { letter: issue, tag, signed: isSigned } } : {};
  return { repo, commit: commit!, date, dirty: [], unrecorded: [], ...named };
}
