import { posix } from 'node:path';
import { visible } from '../../platform/visible.js';
import type { Unread } from '../../project/unread.js';

/** So many are named, the others counted. */
const most = 3;

/** What lies in the folders of a build and is not read, a line a folder and sort. */
export function unreadLines(unread: readonly Unread[]): string[] {
  const groups = new Map<string, string[]>();
  for (const { path, what } of unread) {
    const sort = `${posix.dirname(path)}/: ${what}`;
    groups.set(sort, [...(groups.get(sort) ?? []), posix.basename(path)]);
  }
  return [...groups].map(([sort, names]) => {
    const more = names.length > most ? ` and ${names.length - most} more` : '';
    return visible(`${sort}: ${names.slice(0, most).join(', ')}${more}`);
  });
}
