import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Loaded, load } from '../../src/app/load.js';
import { findingsJson } from '../../src/app/results/findings-json.js';
import type { Place } from '../../src/calc/value.js';
import { type Finding, outcomesByClass, resultOf } from '../../src/checks/engine/finding.js';
import { summaryText } from '../../src/commands/text/summary-text.js';
import { visible } from '../../src/platform/visible.js';
import type { Recall } from '../../src/project/memory.js';
import type { Problem } from '../../src/project/problem.js';
import { showProblem } from '../../src/project/show-problem.js';
import { compose } from '../../src/render/compose.js';
import { htmlPage } from '../../src/render/page.js';
import type { Subject } from '../../src/render/subject.js';
import { type Files, isBlock, opened, type Tree } from './bases.js';

/** What must hold of every build, whatever was done to it. Each breach is a sentence; none means that all holds. */

/** Of a refusal: each problem has its place inside a file of the build, and says what was found, what was expected. */
export function breachesOfRefusal(problems: readonly Problem[], folder: string): string[] {
  if (problems.length === 0) return ['refused without a problem'];
  return problems.flatMap((p) => {
    const says = (what: string) => [`a problem ${what}: ${showProblem(p)}`];
    const lines = p.line === 0 ? [] : linesOf(p.file, folder);
    if (p.found.trim() === '') return says('without what was found');
    if (p.expected.trim() === '') return says('without what was expected');
    if (/\bundefined\b|\[object|\bNaN\b(?! mm)/.test(`${p.expected} ${p.hint ?? ''}`)) return says('that is garbled');
    if (p.line === 0) return aboutWhole.has(p.code) ? [] : says('without a line');
    if (!lines) return says('in a file that is not there');
    if (p.line < 1 || p.line > lines.length) return says(`outside its file of ${lines.length} lines`);
    if (p.column < 1 || p.column > lines[p.line - 1]!.length + 1) return says('outside its line');
    return absolute(showProblem(p), folder) ? says('with an absolute path') : [];
  });
}

/** Problems of a file as a whole. */
const aboutWhole = new Set([
  'build-missing',
  'build-empty',
  'file-unreadable',
  'file-too-large',
  'file-encoding',
  'name-duplicate',
]);

const linesOf = (file: string, folder: string): string[] | undefined =>
  existsSync(join(folder, file))
    ? readFileSync(join(folder, file), 'utf8')
        .replace(/^\ufeff/, '')
        .replace(/\r\n?/g, '\n')
        .split('\n')
    : undefined;

const absolute = (text: string, folder: string) => text.includes(folder) || text.includes(process.cwd());

/** Of a build that is read: what is found on it, what is printed of it. */
export async function breachesOfAccepted(
  loaded: Loaded,
  folder: string,
  files: Files,
  { recall, composed }: { recall: Recall; composed: boolean },
): Promise<string[]> {
  const { build, evaluation } = loaded;
  const json = JSON.stringify(findingsJson(build, evaluation));
  const unsound = badNumber.test([...files.values()].join('\n'));
  const again = await load(folder, folder, recall);
  const same = 'build' in again && JSON.stringify(findingsJson(again.build, again.evaluation)) === json;
  const text = summaryText(build, evaluation, { all: true, width: 100, colour: false });
  return [
    ...(badJson.test(json) ? [`a number that is none in JSON: ${near(json, badJson)}`] : []),
    ...(unsound || !badNumber.test(json) ? [] : [`a number that is none in words: ${near(json, badNumber)}`]),
    ...(unsound || !badNumber.test(text) ? [] : [`a number that is none in the summary: ${near(text, badNumber)}`]),
    ...(/\bundefined\b|\[object /.test(text) ? [`a garbled summary: ${near(text, /\bundefined\b|\[object /)}`] : []),
    ...(same ? [] : ['read with what is remembered of an earlier state, it gives other findings']),
    ...(absolute(json, folder) || absolute(text, folder) ? ['an absolute path among the findings'] : []),
    ...evaluation.findings.flatMap((f) => breachesOfFinding(f, loaded, folder)),
    ...twiceIn(evaluation.findings.map((f) => f.id)).map((id) => `two findings of one id: ${id}`),
    ...twiceIn(evaluation.runs.map((r) => r.id)).map((id) => `two runs of one id: ${id}`),
    ...(composed ? breachesOfPage(loaded, folder, files, unsound) : []),
  ];
}

/** What numbers that are none become. */
const badJson = /[:,[]null[,\]}]/;
const badNumber = /\bNaN\b|\bInfinity\b|[\s(=]-0(?:\.0*)?\b(?![.\d-])/;

const near = (text: string, what: RegExp): string => {
  const at = text.search(what);
  return text.slice(Math.max(0, at - 100), at + 60);
};

const twiceIn = (ids: readonly string[]): string[] => [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];

function breachesOfFinding(f: Finding, { build, evaluation }: Loaded, folder: string): string[] {
  const words: readonly string[] = Object.values(outcomesByClass[f.of]);
  const says = (what: string) => [`finding ${f.id} (${f.of}, ${f.outcome}) ${what}`];
  const place = (p: Place): boolean => {
    const lines = linesOf(p.file, folder);
    return (
      lines !== undefined &&
      p.line >= 1 &&
      p.line <= lines.length &&
      p.column >= 1 &&
      p.column <= lines[p.line - 1]!.length + 1
    );
  };
  return [
    ...(words.includes(f.outcome) ? [] : says('has a word of another class')),
    ...(place(f.place) ? [] : says(`is at no place: ${JSON.stringify(f.place)}`)),
    ...(f.related === undefined || place(f.related.place)
      ? []
      : says(`is related to no place: ${JSON.stringify(f.related)}`)),
    ...(f.note === 'build' || build.notes.some((n) => n.name === f.note) ? [] : says(`is of no note: ${f.note}`)),
    ...(f.run === undefined || evaluation.runs.some((r) => r.id === f.run) ? [] : says(`rests on no run: ${f.run}`)),
    ...(f.says.trim() === '' || /\bundefined\b|\bNaN\b/.test(f.says) ? says(`says nothing: ${f.says}`) : []),
    ...(f.of === 'requirement' && resultOf(f.outcome) === 'met' && (f.limit === undefined || f.measured === undefined)
      ? says('conforms without a value or without a limit')
      : []),
    ...(f.of === 'requirement' && f.basis === 'memory' && f.outcome === 'conforms' ? says('conforms by memory') : []),
    ...(f.of === 'requirement' && f.basis === 'practice' && f.outcome === 'conforms'
      ? says('conforms by practice')
      : []),
    ...(f.proof ?? []).flatMap((p) =>
      p.by.flatMap((by) => (build.files.has(by.file) ? [] : says(`is shown by no file: ${by.file}`))),
    ),
    ...(f.item !== '' ? [] : says('is about no item')),
  ];
}

function pageOf({ build, rules, evaluation }: Loaded): string {
  const subject: Subject = {
    build,
    rules,
    evaluation,
    as: 'submission',
    pictures: new Map(),
    paperPages: new Map(),
    identity: { tool: 'gusset 0', date: '2026-01-01', dirty: [], inputs: '' },
  };
  return htmlPage(compose(subject, new Map()), subject, '');
}

function breachesOfPage(loaded: Loaded, folder: string, files: Files, unsound: boolean): string[] {
  const page = pageOf(loaded);
  const text = textOf(page);
  return [
    ...(unsound || !badNumber.test(text) ? [] : [`a number that is none on the page: ${near(text, badNumber)}`]),
    ...(/<script|javascript:| on[a-z]+="/i.test(page.replace(/&#x3C;[^]*?>/g, '')) ? ['a script on the page'] : []),
    ...(absolute(page, folder) ? ['an absolute path on the page'] : []),
    ...dropped(page, files).map((what) => `typed, and not on the page: ${what}`),
  ];
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };
const textOf = (page: string): string =>
  page
    .replace(/<style[^]*?<\/style>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&#x([0-9A-F]+);/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
    .replace(/&(amp|lt|gt|quot);/g, (_, name: string) => entities[name]!);

/** Only what is seen of a text, so that spaces, quotes and signs that are set otherwise do not count. */
const bare = (text: string): string =>
  text
    .normalize('NFKC')
    .replace(/[^\p{L}\p{N}.]/gu, '')
    .toLowerCase();

/** Keys whose words choose or name something that the page tells in words of its own. */
const toldOtherwise = new Set([
  'kind',
  'file',
  'with',
  'format',
  'stage',
  'word',
  'basis',
  'load-case',
  'invented',
  'id',
  'at',
  'proves',
  'shown',
  'about',
  'item',
  'subject',
  'unit',
]);

/** Numbers and words of the notes that stand nowhere on the page. */
function dropped(page: string, files: Files): string[] {
  const text = bare(textOf(page));
  return [...files].flatMap(([path, file]) => {
    if (!path.startsWith('notes/')) return [];
    const data = opened(file, path)?.data;
    return data
      ? leavesOf(data)
          .filter(({ keys, value }) => !told(text, keys, value))
          .map(({ keys, value }) => `${path} ${keys.join('.')}: ${value.slice(0, 80)}`)
      : [];
  });
}

function told(page: string, keys: readonly string[], value: string): boolean {
  if (keys.some((key) => toldOtherwise.has(key))) return true;
  const number = /^\s*[[+\-−]?\s*(\d+(?:\.\d+)?)/u.exec(value)?.[1];
  if (number !== undefined) return page.includes(number);
  const whole = visible(value, '\n\t');
  const seen = [whole, whole.replace(/<[^>]*>/g, '')].map(bare);
  return seen.some((one) => one.length < 4 || page.includes(one));
}

function leavesOf(tree: Tree, keys: readonly string[] = []): { keys: readonly string[]; value: string }[] {
  if (typeof tree === 'string') return tree === '' ? [] : [{ keys, value: tree }];
  if (Array.isArray(tree)) return tree.flatMap((one) => leavesOf(one, keys));
  return isBlock(tree) ? Object.entries(tree).flatMap(([key, value]) => leavesOf(value, [...keys, key])) : [];
}

/** Findings that come out well although only an uncertainty was enlarged. */
export function earnedByUncertainty(before: Loaded, after: Loaded): string[] {
  const was = new Map(before.evaluation.findings.map((f) => [f.id, f]));
  return after.evaluation.findings.flatMap((f) => {
    if (!['requirement', 'practice', 'element'].includes(f.of) || resultOf(f.outcome) !== 'met') return [];
    const earlier = was.get(f.id);
    return earlier && resultOf(earlier.outcome) === 'met'
      ? []
      : [`earned by uncertainty: ${f.id}, before ${earlier?.outcome ?? 'not there'}: ${f.says}`];
  });
}
