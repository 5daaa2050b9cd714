import { describe, expect, test } from 'vitest';
import { loadCodes } from '../../../src/checks/codes/codes.js';
import { obsolete } from '../../../src/project/obsolete.js';
import { examineNote } from '../kinds/bench.js';

const codes = await loadCodes();
const items = [...codes.items.values()];

describe('what is asked', () => {
  /** Common practice where no source is named; the lamp was recalled from the design rules. None has a figure. */
  const added: Readonly<Record<string, string>> = {
    'brakes.warning-lamp': 'memory',
    'brakes.booster-supply': 'practice',
    'brakes.pipes': 'practice',
    'brakes.side-balance': 'practice',
    'gearbox.reversing-lamp': 'practice',
    'suspension.location': 'practice',
    'wheels.fit': 'practice',
    'wheels.carry': 'practice',
    'steering.stops': 'practice',
    'steering.column-lock': 'practice',
    'body.openings': 'practice',
    'lights-and-body.view': 'practice',
    'fuel.filler': 'practice',
    'seating.head-restraints': 'practice',
    'seating.belt-geometry': 'practice',
    'vehicle.register': 'practice',
    'electrical.isolation': 'practice',
  };

  test.each(Object.entries(added))('%s names the work that raises it, and rests on %s', (id, basis) => {
    expect(codes.items.get(id)).toMatchObject({
      kind: 'answer',
      'because-of': expect.any(String) as string,
      rests: { basis },
    });
    expect(codes.items.get(id)!.rests.clause).toBeUndefined();
  });

  test('an item that was given up is gone, and a build that answers it is told what asks for it now', () => {
    const replaced = items.flatMap((item) =>
      (item.replaces ?? []).map((id) => `${id}: asked together with \`${item.id}\``),
    );
    const told = obsolete.flatMap(({ path, now }) =>
      path[0] === 'answers' && 'gone' in now && !items.some((item) => item.id === path[1])
        ? [`${path[1]}: ${now.gone}`]
        : [],
    );
    expect(told.sort()).toEqual(replaced.sort());
    for (const id of items.flatMap((item) => item.replaces ?? [])) expect(codes.items.has(id), id).toBe(false);
  });

  test.each<[kind: string, note: string, item: string, registration: string, result: string]>([
    ['brakes', '', 'brakes.side-balance', 'VIC', 'missing'],
    ['brakes', '', 'brakes.side-balance', 'NSW', 'out'],
    ['brakes', '', 'brakes.smaller-parts', 'VIC', 'missing'],
    ['brakes', '', 'brakes.smaller-parts', 'SA', 'out'],
    ['brakes', '', 'brakes.lighter-sa', 'SA', 'missing'],
    ['gearbox', '', 'gearbox.speedometer', 'VIC', 'missing'],
    ['gearbox', '', 'gearbox.speedometer', 'NSW', 'out'],
    ['gearbox', '', 'speedometer.kept', 'NSW', 'missing'],
    ['gearbox', 'type: manual', 'gearbox.selector-shown', 'VIC', 'out'],
    ['gearbox', 'type: automatic', 'gearbox.selector-shown', 'VIC', 'missing'],
    ['gearbox', 'type: automatic\nselector-shown: no', 'gearbox.selector-shown', 'VIC', 'against'],
    ['gearbox', '', 'gearbox.selector-shown', 'VIC', 'missing'],
    ['gearbox', 'crossmember: original', 'gearbox.crossmember-shown', 'VIC', 'out'],
    ['gearbox', 'crossmember: new', 'gearbox.crossmember-shown', 'VIC', 'missing'],
    ['rear-axle', 'welded: yes', 'axle.housing-welds', 'VIC', 'missing'],
    ['seating', 'seats: [{ id: a, change: kept }]', 'seating.head-restraints', 'VIC', 'out'],
    ['seating', 'seats: [{ id: a, change: replaced }]', 'seating.head-restraints', 'VIC', 'missing'],
    [
      'seating',
      'answers: { seating.head-restraints: no }\nseats: [{ id: a, change: moved }]',
      'seating.head-restraints',
      'VIC',
      'against',
    ],
  ])('a note on %s with `%s` raises %s in %s: %s', async (kind, note, item, registration, result) => {
    expect((await examineNote(kind, note, { vehicle: { registration } })).result(item)).toBe(result);
  });
});
