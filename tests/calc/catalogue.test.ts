import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allSheets, findSheet, nearestSheets, sheetIds, sheetsOf, subjectOf } from '../../src/calc/catalogue.js';
import { type Subject, subjects } from '../../src/calc/sheet.js';

const names = Object.keys(subjects) as Subject[];

describe('catalogue of sheets', () => {
  it.each(names)('lists the sheets of %s as they are', async (subject) => {
    const sheets = await sheetsOf(subject);
    expect(sheets.map((s) => s.id)).toEqual(sheetIds[subject]);
    for (const sheet of sheets) expect(sheet.subject, sheet.id).toBe(subject);
  });

  it('has every subject that has a folder', () => {
    const folders = readdirSync(new URL('../../src/calc', import.meta.url), { withFileTypes: true }).filter((f) =>
      f.isDirectory(),
    );
    expect(folders.map((f) => f.name).sort()).toEqual([...names].sort());
  });

  it('has ids that are unique over all subjects', async () => {
    const ids = (await allSheets()).map((s) => s.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('finds a sheet by its id, and none by another', async () => {
    expect((await findSheet('engine-capacity'))?.title).toBe('Engine capacity');
    expect(await findSheet('engine-capasity')).toBeUndefined();
    expect(subjectOf('road-speed')).toBe('gearing');
  });

  it('names what was probably meant', () => {
    expect(nearestSheets('engine-capasity')[0]).toBe('engine-capacity');
    expect(nearestSheets('capacity')).toContain('engine-capacity');
    expect(nearestSheets('zzzzzzzz')).toEqual([]);
  });
});
