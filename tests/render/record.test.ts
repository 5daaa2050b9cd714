import { describe, expect, it } from 'vitest';
import { load, shapes } from '../../src/app/load.js';
import { kinds } from '../../src/checks/kinds/index.js';
import { measuredIn } from '../../src/project/measured-in.js';
import { readBuild } from '../../src/project/read.js';
import { anchor } from '../../src/render/anchors.js';
import { textOf } from '../../src/render/markdown.js';
import { itemsAlike, recordOf, sideBySide } from '../../src/render/record.js';
import { recordSection } from '../../src/render/sections/record.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';
import { all, subjectOf } from './document.js';

const assembly = `---
kind: engine-assembly
title: Engine measured
by: JO
bearings:
  - id: mains
    says: main bearings
    journals:
${[1, 2, 3, 4, 5, 6, 7].map((n) => `      - { id: "${n}", journal: { value: 59.9${n} mm, with: caliper-1 }, bore: { value: 60.01 mm, with: caliper-1 } }`).join('\n')}
cranking:
  - { id: "1", pressure: 1190 kPa }
  - { id: "2", pressure: { value: 1200 kPa, with: caliper-1 } }
end-float: 0.14 mm
---
`;

const files = { ...workshop, 'notes/050-assembly.md': assembly };
const note = () => readBuild(folderWith(files), shapes).build!.notes.at(-1)!;

describe('like items of a list', () => {
  it('stand beside each other by their fields, and single values by themselves', () => {
    const { single } = sideBySide(recordOf(note(), kinds.get('engine-assembly')!));
    const { lists, rest } = itemsAlike(single);
    expect(lists.map(({ list, ids, fields }) => [list, ids, fields.map((f) => f.field)])).toEqual([
      ['bearings.mains.journals', ['1', '2', '3', '4', '5', '6', '7'], ['journal', 'bore']],
      ['cranking', ['1', '2'], ['pressure']],
    ]);
    expect(rest.map((r) => r.path.join('.'))).toContain('end-float');
    expect(rest.map((r) => r.path.join('.'))).toContain('bearings.mains.says');
  });
});

describe('the record of a note', () => {
  it('has each measured value once, where pointers to it lead', async () => {
    const folder = folderWith(files);
    const subject = await subjectOf((await load(folder, folder)) as never);
    for (const one of subject.build.notes) {
      const cells = recordSection(one, subject).flatMap((e) => all(e, (x) => typeof x.properties['id'] === 'string'));
      for (const measured of measuredIn(one.data)) {
        const own = cells.filter((c) => c.properties['id'] === anchor.value(one.name, measured.at.path));
        expect(own, `${one.name} ${measured.at.path}`).toHaveLength(1);
        expect(textOf(own[0] as never)).toContain(measured.quantity.text);
      }
    }
  });

  it('tells the uncertainty of a temperature as a difference of temperatures', async () => {
    const cooling = '---\nkind: cooling\ntitle: Radiator\nthermostat: 82 ± 1 degC\n---\n';
    const folder = folderWith({ ...workshop, 'notes/060-cooling.md': cooling });
    const subject = await subjectOf((await load(folder, folder)) as never);
    const text = recordSection(subject.build.notes.at(-1)!, subject)
      .map((e) => textOf(e as never))
      .join(' ');
    expect(text).toMatch(/82 ± 1 degC.*± 1 K/);
    expect(text).not.toMatch(/± −/);
  });
});
