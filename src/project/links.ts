import { posix } from 'node:path';
import type { Definition, Image, Link } from 'mdast';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { near } from '../platform/near.js';
import { findFile } from './files.js';
import { afresh } from './memory.js';
import type { Build, Note } from './model.js';
import type { Problem } from './problem.js';
import type { Query } from './queries.js';

/** Where a relative link of a note or query leads. */
export type Target =
  | { to: 'note' | 'query'; name: string }
  | { to: 'file'; path: string }
  | { to: 'web' }
  | { to: 'nowhere'; why: 'missing' | 'outside'; near?: string | undefined };

export function targetOf(
  url: string,
  note: Pick<Note, 'path'>,
  build: Pick<Build, 'notes' | 'queries' | 'directory'>,
): Target {
  if (/^(?:https?|mailto):/i.test(url)) return { to: 'web' };
  const plain = safelyDecoded(url.split(/[?#]/)[0]!).replaceAll('\\', '/');
  if (/^[a-z][a-z0-9+.-]*:/i.test(plain) || plain.startsWith('/')) return { to: 'nowhere', why: 'outside' };
  const path = posix.normalize(posix.join(posix.dirname(note.path), plain));
  if (path.startsWith('../')) return { to: 'nowhere', why: 'outside' };
  const other = build.notes.find((n) => n.path === path);
  if (other) return { to: 'note', name: other.name };
  const query = build.queries.find((q) => q.path === path);
  if (query) return { to: 'query', name: query.name };
  const found = findFile(build.directory, path, '.');
  if (found.ok) return { to: 'file', path: posix.normalize(found.file.path) };
  if (found.why === 'outside') return { to: 'nowhere', why: 'outside' };
  return {
    to: 'nowhere',
    why: 'missing',
    near:
      near(
        path,
        [...build.notes, ...build.queries].map((n) => n.path),
        1,
      )[0] ?? found.near,
  };
}

/** Links and images of notes and queries that lead nowhere or out of the build. */
export function checkLinks(build: Build, recall = afresh): Problem[] {
  return [...build.notes, ...build.queries].flatMap((note) =>
    recall(`links of ${note.path}`, note.front.body, () => linksIn(note.front.body)).flatMap((node) =>
      broken(node, note, build),
    ),
  );
}

const parser = unified().use(remarkParse);
type LinkNode = Link | Image | Definition;

function linksIn(body: string): LinkNode[] {
  if (!/\]\(|\]:|<[a-z]/i.test(body)) return [];
  const links: LinkNode[] = [];
  visit(parser.parse(body), (node) => {
    if (
      (node.type === 'link' || node.type === 'image' || node.type === 'definition') &&
      !node.url.startsWith('#') &&
      node.url !== ''
    )
      links.push(node);
  });
  return links;
}

function broken(node: LinkNode, note: Note | Query, build: Build): Problem[] {
  const target = targetOf(node.url, note, build);
  if (target.to !== 'nowhere') return [];
  const line = node.position!.start.line + note.front.bodyLine - 1;
  return [
    {
      code: target.why === 'outside' ? 'path-outside' : 'link-missing',
      file: note.file,
      line,
      column: node.position!.start.column,
      endColumn: node.position!.end.line === node.position!.start.line ? node.position!.end.column : undefined,
      source: note.front.sourceLine(line),
      found:
        target.why === 'outside'
          ? `a link out of the build: \`${node.url.slice(0, 80)}\``
          : `a link to \`${node.url.slice(0, 80)}\`, which is not there`,
      expected: 'a note, photo or paper of this build',
      hint: target.near ? `did you mean \`${target.near}\`?` : undefined,
    },
  ];
}

function safelyDecoded(url: string): string {
  try {
    return decodeURIComponent(url);
  } catch {
    return url;
  }
}
