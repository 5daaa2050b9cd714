import { describe, expect, it } from 'vitest';
import { examineNote } from '../kinds/bench.js';

/** Two statements that do not agree: what rests on them is evaluated with each. Figures are made up. */

const engine = (mass: string, capacity: string) =>
  `capacity: ${capacity}\ninduction: na\nanswers: { engine.original-mass: ${mass} }`;
const around = (mass: string) => ({ original: { mass } });

describe('an original mass that is stated twice', () => {
  it('is one open item that lists what depends on it, and the limit is inconclusive', async () => {
    // 5 cm3/kg from 1100 kg, 4 below: 6200 cm3 with 1240 kg, 3600 cm3 with 900 kg (recalled band).
    const { one, all } = await examineNote('engine', engine('900 kg', '5000 cm3'), around('1240 kg'));
    const cause = one('agreement', 'original_mass');
    expect(cause).toMatchObject({
      outcome: 'contradicted',
      place: { path: 'answers.engine.original-mass' },
      related: { place: { path: 'original.mass' } },
    });
    expect(cause.says).toContain('what depends on it: Swept volume for the vehicle');
    const capacity = one('engine.capacity');
    expect(capacity.outcome).toBe('inconclusive');
    expect(capacity.says).toMatch(/900 kg \(010-tried\): limit not confirmed; with .* 1240 kg \(build.md\): conforms/);
    expect(all('agreement')).toHaveLength(1);
  });
  it('does not touch an outcome that is the same with both', async () => {
    // 1240 kg and 1150 kg: 6200 and 5750 cm3.
    const { one } = await examineNote('engine', engine('1150 kg', '5000 cm3'), around('1240 kg'));
    expect(one('engine.capacity').result).toBe('met');
    expect(one('agreement').says).toContain('no outcome depends');
  });
  it('with 1240 kg conforms, with 1150 kg does not', async () => {
    const { one } = await examineNote('engine', engine('1150 kg', '6000 cm3'), around('1240 kg'));
    expect(one('engine.capacity').says).toMatch(
      /1150 kg \(010-tried\): does not conform; .*1240 kg \(build.md\): conforms/,
    );
  });
  it.each([
    ['1240 kg', 0],
    ['1240 kg, tare of the heaviest saloon', 0],
    ['"tare of the heaviest saloon with the 2.6 l six: 1240 kg"', 0],
    ['1240.5 kg', 1],
    ['1241 kg', 1],
    ['1.24 t', 0],
    ['see the brochure', 0],
    ['1240 mm', 0],
  ])('stated as %s beside 1240 kg: %d open', async (mass, open) => {
    const { all } = await examineNote('engine', engine(mass, '3000 cm3'), around('1240 kg'));
    expect(all('agreement')).toHaveLength(open);
  });
});

describe('facts of the vehicle as modified', () => {
  const tyre = (size: string) => `kind: wheels-tyres\nrear: { now: { tyre: ${size} } }`;
  it('of two notes are tried both; those of build.md as it came are another matter', async () => {
    const notes = { '020-engine.md': 'kind: engine\ncapacity: 3400 cm3\ninduction: na' };
    const { all } = await examineNote('engine', 'capacity: 3000 cm3\ninduction: na', { notes });
    expect(all('agreement').map((f) => f.subject)).toEqual(['engine_capacity']);
    const axle = await examineNote('rear-axle', 'now: { ratio: 4.11 }', { original: { 'final-drive': '3.70' } });
    expect(axle.all('agreement')).toEqual([]);
  });
  it('calculated by two notes are held against each other', async () => {
    const bore = (mm: string) => `bore: ${mm}\nstroke: 86.0 mm\ncylinders: 4\ninduction: na`;
    const notes = { '020-engine.md': `kind: engine\n${bore('90.0 mm')}` };
    const { all } = await examineNote('engine', bore('86.0 mm'), { notes });
    expect(
      all('agreement')
        .map((f) => f.subject)
        .toSorted(),
    ).toEqual(['engine_bore', 'engine_capacity']);
  });
  it('agree where they are the same', async () => {
    const { all } = await examineNote('wheels-tyres', 'rear: { now: { tyre: 205/65R15 94H } }', {
      notes: { '020-wheels.md': tyre('205/65R15 94H') },
    });
    expect(all('agreement')).toEqual([]);
  });
});
