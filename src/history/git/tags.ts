import type { Person } from '../who.js';
import { sameZone } from './commits.js';
import { letterNumber } from './issue-letter.js';
import { type GitFolder, git } from './run.js';
import { letterOf, tagName } from './tag-name.js';

export interface Tag {
  /** Without `refs/tags/`. */
  name: string;
  /** Id of the tag object; of the commit where the tag is a bare name. */
  object: string;
  /** A tag object with tagger, date and message; a bare name can be moved without a trace and proves nothing. */
  annotated: boolean;
  /** The name that the tag object itself gives: another than `name` if somebody put it under another. */
  ownName: string;
  tagger: Person;
  /** ISO 8601 with offset, as the tagger's computer said; empty where there is none. */
  date: string;
  /** Without the signature. */
  message: string;
  /** The commit it stands for; none if it points at something else. */
  commit: string | undefined;
}

export interface IssueTag extends Tag {
  letter: string;
}

const format = [
  'refname:strip=2',
  'objecttype',
  'objectname',
  'tag',
  'taggername',
  'taggeremail:trim',
  'taggerdate:iso-strict',
  'contents:subject',
  'contents:body',
  '*objecttype',
  '*objectname',
];

/** The issues of a build (its id, else the name of its folder), in the order of their letters. */
export async function issueTags(repo: GitFolder, build: string): Promise<IssueTag[]> {
  const stem = tagName(build, 'A').replace(/A$/, '');
  const found = await tagsLike(repo, `refs/tags/${stem}*`);
  return found
    .flatMap((tag) => {
      const letter = letterOf(tag.name);
      return letter === undefined || tag.name !== stem + letter ? [] : [{ ...tag, letter }];
    })
    .sort((a, b) => letterNumber(a.letter) - letterNumber(b.letter));
}

/** The tag of that name; nothing if there is none. */
export async function tagNamed(repo: GitFolder, name: string): Promise<Tag | undefined> {
  if (/[\p{Cc}*?[\\]/u.test(name)) return undefined;
  return (await tagsLike(repo, `refs/tags/${name}`)).find((tag) => tag.name === name);
}

async function tagsLike(repo: GitFolder, pattern: string): Promise<Tag[]> {
  const out = await git(repo, [
    'for-each-ref',
    `--format=${format.map((field) => `%(${field})%00`).join('')}`,
    pattern,
  ]);
  const tokens = out.toString('utf8').split('\0');
  const tags: Tag[] = [];
  for (let at = 0; at + format.length < tokens.length; at += format.length) {
    tags.push(tagFrom(tokens.slice(at, at + format.length)));
  }
  return tags;
}

function tagFrom(parts: readonly string[]): Tag {
  const [
    name = '',
    type = '',
    object = '',
    ownName = '',
    tagger = '',
    email = '',
    date = '',
    subject = '',
    body = '',
    targetType = '',
    target = '',
  ] = parts;
  const annotated = type === 'tag';
  return {
    // for-each-ref ends every entry with a line end, which stands before the next name.
    name: name.replace(/^\n/, ''),
    object,
    annotated,
    ownName,
    tagger: { name: tagger, email },
    date: sameZone(date),
    message: annotated ? [subject, body.trimEnd()].filter((part) => part !== '').join('\n\n') : '',
    commit: annotated ? (targetType === 'commit' ? target : undefined) : type === 'commit' ? object : undefined,
  };
}
