import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { textOf } from '../../src/render/markdown.js';
import { identityPage } from '../../src/render/sections/identity.js';
import { folderWith } from '../project/scratch.js';
import { all, subjectOf } from './document.js';

const build = `---
title: A car made up for tests
vehicle: { make: Examplia, model: One, built: 1984-05 }
original: { mass: 1100 kg, capacity: 1796 cm3 }
---
`;
const note = (frontmatter: string) => `---\nkind: engine\ntitle: Another engine\n${frontmatter}\n---\n\nWords.\n`;

async function rows(frontmatter: string): Promise<string[]> {
  const folder = folderWith({ 'build.md': build, 'notes/010-engine.md': note(frontmatter) });
  const page = identityPage(await subjectOf((await load(folder, folder)) as never));
  return all(page, (e) => e.tagName === 'tr').map((e) => textOf(e));
}

// π/4 · 86² · 86 mm³ · 4 = 1998 cm3, by hand.
it('shows the swept volume that a sheet gives, with the sheet', async () => {
  const row = (await rows('bore: 86.0 mm\nstroke: 86.0 mm\ncylinders: 4')).find((r) => r.startsWith('Swept volume'));
  expect(row).toMatch(/^Swept volume.*1796 cm.*1998/);
  expect(row).toContain('capacity');
});

it('shows what the note states where it states it, and a dash where nothing is known', async () => {
  expect((await rows('capacity: 2998 cm3')).find((r) => r.startsWith('Swept volume'))).toMatch(/2998/);
  expect((await rows('number: X1')).find((r) => r.startsWith('Swept volume'))).toMatch(/–$/);
});
