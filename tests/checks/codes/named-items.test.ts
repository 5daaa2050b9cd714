import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { loadCodes } from '../../../src/checks/codes/codes.js';

/** An item that is named and that no code has is never found: whoever asks for it asks in vain. */

const { items } = await loadCodes('AU');
const families = new Set([...items.keys()].map((id) => id.split('.')[0]));

/** Places of fields that look like items. */
const fields = new Set(['brakes.stops', 'vehicle.registration', 'vehicle.category']);

const files = ['src/checks', 'src/render', 'src/app', 'src/commands'].flatMap((folder) =>
  (readdirSync(folder, { recursive: true }) as string[])
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name)),
);

/** Ids in quotes; a part that is put in stands for any words. */
function namedIn(file: string): { id: string; file: string }[] {
  const texts = [
    ...readFileSync(file, 'utf8').matchAll(
      /(['`])([a-z][a-z0-9]*(?:-[a-z0-9]+)*\.(?:[a-z0-9.-]|\$\{[^}]*\})+)(?: [a-z -]+)?\1/g,
    ),
  ];
  return texts
    .map(([, , id]) => ({ id: id!, file }))
    .filter(
      ({ id }) => families.has(id.split('.')[0]!) && !fields.has(id) && !/\.(?:md|yaml|ts|js|json|jpg|pdf)$/.test(id),
    );
}

const isThere = (id: string) => {
  const like = new RegExp(
    `^${id
      .split(/\$\{[^}]*\}/)
      .map((part) => part.replaceAll('.', '\\.'))
      .join('[a-z0-9-]+')}$`,
  );
  return [...items.keys()].some((known) => like.test(known));
};

it('every item that the program names is one of the codes', () => {
  const named = files.flatMap(namedIn);
  expect(named.length).toBeGreaterThan(300);
  expect(named.filter(({ id }) => !isThere(id))).toEqual([]);
});
