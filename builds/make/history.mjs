/**
 * Commits the demo step by step, as its invented people would have, into a repository of its own:
 * `node builds/make/history.mjs <new folder> [--without-issues] [--fresh] [--document <folder>]`, after `npm run build`. Needs git
 * and no network. Issues A and B are printed to `<new folder>/out/`, the last of them is copied to the folder of `--document`;
 * they are not signed, whatever git is set up to do. `--fresh` first removes what an earlier run made there.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { devNull } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { asItStood, isTaken, paperOn } from './history/as-it-stood.mjs';
import { commits, people } from './history/story.mjs';
import { typeset } from './papers/typeset.mjs';

const { values, positionals } = parseArgs({ allowPositionals: true, options: { 'without-issues': { type: 'boolean' }, fresh: { type: 'boolean' }, document: { type: 'string' } } });
const [folder] = positionals;
const mark = 'The demo of Gusset, committed step by step by a script. Invented.\n';
if (folder && values.fresh && existsSync(join(folder, 'README')) && readFileSync(join(folder, 'README'), 'utf8') === mark) rmSync(folder, { recursive: true });
if (!folder || existsSync(folder)) {
  console.error('Name a folder that is not there yet.');
  process.exit(2);
}
const root = resolve(folder);
const build = join(root, 'builds/sedge');
const source = fileURLToPath(new URL('../sedge', import.meta.url));
const cli = fileURLToPath(new URL('../../dist/bundle/cli.js', import.meta.url));
mkdirSync(build, { recursive: true });
git(['init', '--quiet', '--initial-branch=main']);
writeFileSync(join(root, '.gitignore'), 'out/\n');
writeFileSync(join(root, 'README'), mark);

const texts = ['build.md', 'limits.yaml', ...['notes', 'queries'].flatMap((part) => readdirSync(join(source, part)).map((file) => `${part}/${file}`))];
const ownerOf = Object.fromEntries(texts.map((path) => [path, readFileSync(join(source, path), 'utf8').match(/^by: (\w+)$/m)?.[1] ?? 'JO']));
const laid = new Map();
const filesIn = (part) => readdirSync(join(source, part));

for (const commit of commits) {
  const day = commit.on.slice(0, 10);
  for (const path of texts.filter((path) => ownerOf[path] === commit.by)) put(path, asItStood(path, readFileSync(join(source, path), 'utf8'), day));
  for (const file of filesIn('photos').filter((file) => isTaken(file.slice(0, -4), day))) put(`photos/${file}`, readFileSync(join(source, 'photos', file)));
  for (const file of filesIn('papers')) {
    const paper = paperOn(file.slice(0, -4), day);
    if (!paper || laid.get(file) === paper) continue;
    put(`papers/${file}`, Buffer.from(await typeset(paper)));
    laid.set(file, paper);
  }
  const names = Object.fromEntries(['AUTHOR', 'COMMITTER'].flatMap((who) => [[`GIT_${who}_NAME`, people[commit.by].name], [`GIT_${who}_EMAIL`, people[commit.by].email], [`GIT_${who}_DATE`, commit.on]]));
  git(['add', '--all']);
  git(['-c', 'commit.gpgSign=false', '-c', 'core.hooksPath=/dev/null', 'commit', '--quiet', '--message', commit.says], names);
  console.log(`${day} ${commit.by} ${commit.says}`);
  if (commit.issue && !values['without-issues']) {
    const out = join(root, 'out', commit.issue);
    execFileSync(process.execPath, [cli, 'issue', 'builds/sedge', '--with-open', '--out', out], { cwd: root, stdio: 'inherit', env: { ...process.env, GIT_CONFIG_GLOBAL: devNull, ...names } });
    if (values.document) cpSync(out, values.document, { recursive: true });
  }
}

if (values.document && existsSync(values.document)) console.log(`The document with its last issue: ${join(values.document, 'submission.pdf')}`);

function put(path, content) {
  const file = join(build, path);
  if (content === undefined) return rmSync(file, { force: true });
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, content);
}

function git(args, names = {}) {
  execFileSync('git', args, { cwd: root, stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, ...names } });
}
