import { existsSync, readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Finding, isOpen } from '../../checks/engine/finding.js';
import { outcomeWord, signOf } from '../../checks/engine/outcome-words.js';
import { bySeverity } from '../../checks/engine/severity.js';
import { signingSetUp } from '../../history/git/create-tag.js';
import { limitsOf } from '../../history/git/limits.js';
import type { Repository } from '../../history/git/repository.js';
import { tryGit } from '../../history/git/run.js';
import { shown } from '../../history/who.js';
import { idOf } from '../../project/build-id.js';
import { type Build, issuesUnder } from '../../project/model.js';
import { showProblem } from '../../project/show-problem.js';
import type { Loaded } from '../load.js';
import { activePapers } from '../publish/document-papers.js';
import { brokenPhotos, type PhotoSize, prepareAll } from '../publish/document-photos.js';
import { unprintableCharacters } from '../publish/printable.js';
import type { Standing } from '../repository/standing.js';

/** Something that must hold before a document may carry an issue letter. */
export interface Precondition {
  name: string;
  met: boolean;
  /** What was found; where it is not met, with what to do. */
  says: string;
  /** One by one, what stands against it. */
  list?: string[];
}

const most = 20;
const listed = (all: readonly string[]): string[] =>
  all.length > most ? [...all.slice(0, most), `and ${all.length - most} more`] : [...all];

/** The repository can record an issue, and tell the whole history. */
export function repositoryFit(repo: Repository): Precondition {
  // A detached head is no reason: the tag keeps the commit.
  const against = limitsOf({ ...repo, detached: false });
  return {
    name: 'repository',
    met: against.length === 0,
    says: against.length === 0 ? `commits are recorded in ${repo.root}` : against.join(' '),
  };
}

/** No build beside it, of which it may be a copy, has its issues under the same name. */
export function ownId(build: Build): Precondition[] {
  const name = issuesUnder(build);
  const twins = otherBuilds(build.directory).filter((folder) => (idOf(folder) ?? nameOfBuild(folder)) === name);
  if (twins.length === 0) return [];
  return [
    {
      name: 'id',
      met: false,
      says: `another build has the id ${shown(name)} too, so that their issues would be counted as one: take the line \`id:\` out of build.md of the copy, and \`gusset note <build> --update\` gives it its own`,
      list: listed(twins.map((folder) => shown(basename(folder)))),
    },
  ];
}

/** Of a folder that is a build the name under which its issues are found where it has no id. */
const nameOfBuild = (folder: string): string | undefined =>
  existsSync(join(folder, 'build.md')) ? basename(folder) : undefined;

function otherBuilds(directory: string): string[] {
  return readdirSync(dirname(directory), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== basename(directory))
    .map((entry) => join(dirname(directory), entry.name));
}

export function committed({ dirty, unrecorded }: Standing): Precondition[] {
  const changed = dirty.filter((path) => !unrecorded.includes(path));
  return [
    changed.length === 0
      ? { name: 'committed', met: true, says: 'the folder of the build is as it was committed' }
      : {
          name: 'committed',
          met: false,
          says: 'files differ from what is committed: commit them, or take them out of the folder',
          list: listed(changed.map(shown)),
        },
    unrecorded.length === 0
      ? { name: 'recorded', met: true, says: 'every file that the document rests on is in the commit' }
      : {
          name: 'recorded',
          met: false,
          says: 'the document would rest on files that no commit holds, because a .gitignore or a filter keeps them out: take them out of the .gitignore and commit them',
          list: listed(unrecorded.map(shown)),
        },
  ];
}

export function notIssued({ commit, issue }: Standing): Precondition {
  if (!issue) return { name: 'new', met: true, says: `commit ${commit.slice(0, 8)} has not been issued` };
  return {
    name: 'new',
    met: false,
    says: `commit ${commit.slice(0, 8)} is issue ${issue.letter} already: \`gusset print\` prints it again; commit what has changed before the next issue`,
  };
}

/** Photos can be shown, papers do no more than show, and all characters can be printed. */
export async function showable({ build }: Loaded, size: PhotoSize, say: (says: string) => void): Promise<Precondition> {
  const problems = [
    ...brokenPhotos(build, await prepareAll(build, size, say)),
    ...(await activePapers(build)),
    ...unprintableCharacters(build),
  ];
  return {
    name: 'showable',
    met: problems.length === 0,
    says:
      problems.length === 0
        ? 'every photo can be shown, no paper does more than show, and every character can be printed'
        : 'put these right',
    list: problems.map((p) => showProblem(p)),
  };
}

/** Open findings do not stop an issue, but nobody issues them without knowing. */
export function openFindings(findings: readonly Finding[], accepted: boolean): Precondition {
  const open = findings.filter(isOpen).sort(bySeverity);
  if (open.length === 0) return { name: 'findings', met: true, says: 'no finding is open' };
  const list = listed(
    open.map(
      (f) =>
        `${signOf(f.outcome)} ${outcomeWord(f)}  ${shown(f.title)}${f.subject ? ` (${shown(f.subject)})` : ''}, ${f.note}`,
    ),
  );
  return {
    name: 'findings',
    met: accepted,
    says: `${open.length} finding(s) are open and will stand in the document as such${accepted ? '' : ': settle them, or issue it with --with-open'}`,
    list,
  };
}

/** Somebody is set up who makes the tag and, if that is wanted, signs it. */
export async function tagger(repo: Repository, requireSignature: boolean): Promise<Precondition[]> {
  const [who, signs] = await Promise.all([
    tryGit(repo, ['var', 'GIT_COMMITTER_IDENT'], { settings: ['user.useConfigOnly=true'] }),
    signingSetUp(repo),
  ]);
  const name = who.out
    .toString('utf8')
    .trim()
    .replace(/ \d+ [+-]\d+$/, '');
  return [
    who.code === 0
      ? { name: 'tagger', met: true, says: `the tag is made by ${shown(name)}` }
      : {
          name: 'tagger',
          met: false,
          says: 'git does not know who makes the tag: set user.name and user.email with `git config`',
        },
    signs
      ? { name: 'signature', met: true, says: 'git is set up to sign, so the tag will be signed' }
      : {
          name: 'signature',
          met: !requireSignature,
          says: `git is not set up to sign, so the tag will not prove who made it${requireSignature ? ': set user.signingkey (and gpg.format to ssh for an SSH key)' : ''}`,
        },
  ];
}
