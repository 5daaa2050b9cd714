import type { Build } from '../../project/model.js';

/** What a certifying engineer is called as a role in `build.md`. */
const role = /\b(?:certif|signatory|approved person)/i;

/** A name without what stands in brackets behind it, spaces and capitals aside. */
const plain = (name: string): string =>
  name
    .replace(/\([^)]*\)/g, '')
    .replace(/[\s.]+/g, ' ')
    .trim()
    .toLowerCase();

/** The people whose word settles something: the certifier of `build.md`, and whoever has that role there. */
export function certifiersOf({ data }: Pick<Build, 'data'>): string[] {
  return [
    ...(data.certifier ? [data.certifier.name] : []),
    ...(data.people ?? []).filter((p) => role.test(p.role)).flatMap((p) => [p.name, p.id]),
  ];
}

export const isCertifier = (name: string, build: Pick<Build, 'data'>): boolean =>
  certifiersOf(build).some((known) => plain(known) === plain(name));
