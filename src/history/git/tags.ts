import type { Person } from '../who.js';
import { readObjects } from './cat-file.js';
import { sameZone } from './commits.js';
import { letterNumber } from './issue-letter.js';
import { readTag } from './objects.js';
import { type GitFolder, git } from './run.js';
import { type SignatureFormat, signatureFormat, withoutSignature } from './signature.js';
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
  /** The tag object, byte for byte as its id was made of it. */
  raw?: Buffer;
  /** The form of the signature that it carries, whether it fits or not. */
  signature?: SignatureFormat;
}

export interface IssueTag extends Tag {
  letter: string;
}

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
  const format = '%(refname:strip=2)%00%(objecttype)%00%(objectname)%00';
  const tokens = (await git(repo, ['for-each-ref', `--format=${format}`, pattern])).toString('utf8').split('\0');
  const refs: { name: string; type: string; object: string }[] = [];
  for (let at = 0; at + 3 < tokens.length; at += 3) {
    const [name = '', type = '', object = ''] = tokens.slice(at, at + 3);
    // for-each-ref ends every entry with a line end, which stands before the next name.
    refs.push({ name: name.replace(/^\n/, ''), type, object });
  }
  const raw = new Map<string, Buffer>();
  const annotated = refs.filter(({ type }) => type === 'tag').map(({ object }) => object);
  for await (const found of readObjects(repo, annotated))
    if (found.state === 'read' && found.type === 'tag') raw.set(found.id, found.data);
  return refs.map(({ name, type, object }) => tagFrom(name, object, type, raw.get(object)));
}

function tagFrom(name: string, object: string, type: string, raw: Buffer | undefined): Tag {
  if (!raw) {
    const nobody = { name: '', email: '' };
    const commit = type === 'commit' ? object : undefined;
    return { name, object, annotated: false, ownName: '', tagger: nobody, date: '', message: '', commit };
  }
  const { target, targetType, ownName, tagger, date, body } = readTag(raw);
  const signature = signatureFormat(body);
  return {
    name,
    object,
    annotated: true,
    ownName,
    tagger,
    date: sameZone(date),
    message: withoutSignature(body).trim(),
    commit: targetType === 'commit' ? target : undefined,
    raw,
    ...(signature === undefined ? {} : { signature }),
  };
}
