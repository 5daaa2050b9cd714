import { basename, resolve } from 'node:path';
import {
  committed,
  notIssued,
  openFindings,
  ownId,
  type Precondition,
  repositoryFit,
  showable,
  tagger,
} from '../app/issue/preconditions.js';
import { sealWithTag } from '../app/issue/seal.js';
import { type Loaded, load } from '../app/load.js';
import { withBuildAt } from '../app/repository/build-at.js';
import { type Issue, type Standing, standingOf } from '../app/repository/standing.js';
import { signingSetUp } from '../history/git/create-tag.js';
import { nextLetter } from '../history/git/issue-letter.js';
import { openRepository, type Repository } from '../history/git/repository.js';
import { tagName } from '../history/git/tag-name.js';
import { issueTags } from '../history/git/tags.js';
import { realFolder, refuseToReplace } from '../platform/own-output.js';
import { UsageError } from '../platform/usage.js';
import { issuesUnder } from '../project/model.js';
import type { Problem } from '../project/problem.js';
import { showProblem } from '../project/show-problem.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { progressLine } from './terminal/progress.js';

export const form = formOf({
  command: 'issue',
  names: [{ name: 'build', is: 'folder' }],
  about: `Makes the next issue of the document: checks that everything is committed and can be shown, prints it with its letter
to out/<build>/, and tags the commit with a tag that names the printed file by its digest. If anything fails, no tag stays and
the last output stays.`,
  options: {
    as: { oneOf: ['submission', 'proposal'], usual: 'submission', says: 'which document' },
    'with-open': { flag: true, says: 'issue it although findings are open; they stand in it as such' },
    'require-signature': {
      flag: true,
      says: 'refuse unless the tag is signed; without it the tag is signed where git is set up to sign',
    },
    'dry-run': { flag: true, says: 'say what would be done, and do nothing' },
    out: { takes: 'folder', otherwise: 'out/<build>', is: 'folder', says: 'where to' },
    photos: { oneOf: ['print', 'mail'], usual: 'print', says: 'size of the photos' },
  },
  examples: ['gusset issue builds/wagon --dry-run', 'gusset issue builds/wagon --with-open --require-signature'],
});

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  const [folder] = names as [string];
  const { as, photos } = values;
  const repo = await openRepository(folder);
  if (repo.kind === 'none') throw new UsageError(repo.reason);
  const out = values.out ?? `out/${basename(resolve(folder))}`;
  refuseToReplace(realFolder(out), [folder, repo.root], out);
  const fit = repositoryFit(repo);
  if (!fit.met) return refuse([fit], io);
  const loaded = await load(folder);
  if (!('build' in loaded)) return unreadable(loaded.problems, io);
  const { standing } = await standingOf(loaded.build);
  const progress = progressLine(io);
  try {
    const all = [
      fit,
      ...ownId(loaded.build),
      ...committed(standing!),
      notIssued(standing!),
      await showable(loaded, photos, progress.say),
      openFindings(loaded.evaluation.findings, values['with-open']),
      ...(await tagger(repo, values['require-signature'])),
    ];
    progress.end();
    const issue = await nextIssue(repo, issuesUnder(loaded.build));
    if (values['dry-run']) {
      io.stdout(
        `${conditionsText(all)}\n${all.every((c) => c.met) ? 'Would make' : 'Would not make'} issue ${issue.letter}: ${as} in ${out}/, tag ${issue.tag} on commit ${standing!.commit.slice(0, 8)}${issue.signed ? ', signed' : ''}. Nothing was done.\n`,
      );
      return all.every((c) => c.met) ? exits.clean : exits.findings;
    }
    if (!all.every((c) => c.met)) return refuse(all, io);
    const made = await make(
      loaded,
      { ...standing!, issue },
      { as, photos, out: resolve(out), progress: progress.say },
      values['require-signature'],
    );
    progress.end();
    if ('problems' in made) return unreadable(made.problems, io);
    io.stdout(
      `${made.document}: ${made.pages} pages in ${out}/, tag ${issue.tag}${issue.signed ? ', signed' : ', not signed'}.\nGive the tag out with the commits: git push --follow-tags\n`,
    );
    return exits.clean;
  } finally {
    progress.end();
  }
}

async function nextIssue(repo: Repository, build: string): Promise<Issue> {
  const letter = nextLetter((await issueTags(repo, build)).map((t) => t.letter));
  return { letter, tag: tagName(build, letter), signed: await signingSetUp(repo) };
}

type Making = {
  as: 'submission' | 'proposal';
  photos: 'print' | 'mail';
  out: string;
  progress: (says: string) => void;
};

/** Prints from the commit and not from the folder, as whoever verifies the issue will do. */
async function make({ build }: Loaded, standing: Standing, options: Making, requireSignature: boolean) {
  const { repo, commit } = standing;
  const { publish } = await import('../app/publish/publish.js');
  return withBuildAt(repo, { commit, prefix: repo.prefix, name: build.name }, async (folder) => {
    const loaded = await load(folder, folder);
    if (!('build' in loaded)) return loaded;
    const done = await sealWithTag(standing, build.data.title, requireSignature, (seal) =>
      publish(loaded, { ...options, standing, seal }),
    );
    return 'problems' in done ? done : { document: done.manifest.document, pages: done.printed.pages };
  });
}

function unreadable(problems: readonly Problem[], io: Io): Exit {
  io.stderr(
    `${problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n\n${problems.length} problem(s) keep the notes from being read. Nothing was issued.\n`,
  );
  return exits.usage;
}

function refuse(conditions: readonly Precondition[], io: Io): Exit {
  io.stderr(
    `${conditionsText(conditions.filter((c) => !c.met))}\nNothing was issued; what stood in the output folder is untouched.\n`,
  );
  return exits.findings;
}

function conditionsText(conditions: readonly Precondition[]): string {
  return conditions
    .map((c) =>
      [
        `${c.met ? '✓' : '✗'} ${c.name}: ${c.says}`,
        ...(c.list ?? []).map((line) => `    ${line.replaceAll('\n', '\n    ')}`),
      ].join('\n'),
    )
    .join('\n');
}
