import { createHash } from 'node:crypto';
import { MachineFailure } from '../../platform/failure.js';

export const objectTypes = ['blob', 'tree', 'commit', 'tag'] as const;
export type ObjectType = (typeof objectTypes)[number];

/** The id that git gives to an object of this type and these bytes; `like` is an id of the repository, SHA-1 or SHA-256. */
function idOf(type: ObjectType, data: Uint8Array, like: string): string {
  return createHash(like.length === 40 ? 'sha1' : 'sha256')
    .update(`${type} ${data.length}\0`)
    .update(data)
    .digest('hex');
}

/** The repository holds other contents under an id than it was made of: somebody put them there, or the disk lost some. */
export class AlteredObject extends MachineFailure {
  readonly id: string;
  constructor(id: string, type: ObjectType) {
    super({
      found: `under ${id} (${kinds[type]}) the repository holds other contents than the id stands for`,
      expected: 'objects whose ids are the digests of their contents',
      todo: 'rely on nothing that this repository shows: see `git fsck`, and clone it again from whom you trust',
    });
    this.id = id;
  }
}

const kinds = { blob: 'a file', tree: 'a folder', commit: 'a commit', tag: 'a tag' } as const;

/** Throws AlteredObject unless the id is that of these contents: git looks objects up by their ids, and hashes none of them. */
export function mustBe(id: string, type: ObjectType, data: Uint8Array): void {
  if (idOf(type, data, id) !== id) throw new AlteredObject(id, type);
}

/** The tree of a commit, its parents, and when it was made (ISO 8601 with offset). */
export function readCommit(data: Buffer): { tree: string; parents: string[]; committed: string } {
  const { fields } = parted(data);
  const of = (name: string) => fields.filter(([n]) => n === name).map(([, value]) => value);
  return { tree: of('tree')[0] ?? '', parents: of('parent'), committed: personAndDate(of('committer')[0] ?? '').date };
}

export interface RawEntry {
  mode: string;
  name: string;
  id: string;
}

/** The entries of a tree: mode, name, NUL, id in bytes. */
export function readTree(data: Buffer, idLength: number): RawEntry[] {
  const entries: RawEntry[] = [];
  for (let at = 0; at < data.length; ) {
    const [space, end] = [data.indexOf(0x20, at), data.indexOf(0, at)];
    const next = end + 1 + idLength / 2;
    if (space === -1 || end < space || next > data.length) break;
    entries.push({
      mode: data.toString('latin1', at, space),
      name: data.toString('utf8', space + 1, end),
      id: data.toString('hex', end + 1, next),
    });
    at = next;
  }
  return entries;
}

/** What a tag says: what it stands for, its own name, who made it when, and its message with the signature, if it has one. */
export function readTag(data: Buffer): {
  target: string;
  targetType: string;
  ownName: string;
  tagger: { name: string; email: string };
  date: string;
  body: string;
} {
  const { fields, body } = parted(data);
  const of = (name: string) => fields.find(([n]) => n === name)?.[1] ?? '';
  const { date, ...tagger } = personAndDate(of('tagger'));
  return { target: of('object'), targetType: of('type'), ownName: of('tag'), tagger, date, body };
}

function parted(data: Buffer): { fields: [string, string][]; body: string } {
  const text = data.toString('utf8');
  const end = text.indexOf('\n\n');
  const head = end === -1 ? text : text.slice(0, end);
  return {
    fields: head.split('\n').map((line): [string, string] => {
      const space = line.indexOf(' ');
      return space === -1 ? [line, ''] : [line.slice(0, space), line.slice(space + 1)];
    }),
    body: end === -1 ? '' : text.slice(end + 2),
  };
}

/** `Jo <jo@example> 1770000000 +1000`. */
function personAndDate(text: string): { name: string; email: string; date: string } {
  const [, name = '', email = '', seconds, sign, hours, minutes] =
    /^(.*?) ?<([^<>]*)>(?: (\d+) ([+-])(\d\d)(\d\d))?/.exec(text) ?? [];
  if (seconds === undefined) return { name, email, date: '' };
  const ahead = (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
  const local = new Date(Number(seconds) * 1000 + ahead * 60_000);
  const date = Number.isNaN(local.getTime()) ? '' : `${local.toISOString().slice(0, 19)}${sign}${hours}:${minutes}`;
  return { name, email, date };
}
