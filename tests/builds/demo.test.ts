import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { outcomesByClass, resultOf } from '../../src/checks/engine/finding.js';
import { frontOf, item, n, note, reckon, sedge } from './demo.js';

/**
 * Numbers of the demo reckoned again from what was typed, by mathjs and by expressions that stand here, next to what the
 * program reckons. The formulas are mechanics and geometry that any handbook has; nothing of the program is called for them.
 */

const loaded = await load(sedge);
if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
const { findings, runs } = loaded.evaluation;
const sheet = (id: string): Record<string, number> => {
  const run = runs.find((r) => r.id === id);
  if (!run?.results) throw new Error(`no results of ${id}`);
  return Object.fromEntries(Object.entries(run.results).map(([name, value]) => [name, value.si]));
};
const build = frontOf('build.md');
const wheelbase = n(build['original']!['wheelbase']!, 'mm');
const mass = note('190');
const axle = (state: 'was' | 'now', end: 'front' | 'rear'): number =>
  n(mass[state]![`${end}-left`]!, 'kg') + n(mass[state]![`${end}-right`]!, 'kg');

describe('engine and gearing', () => {
  const engine = note('010');
  it('bore and stroke of six cylinders are 2961 cm³, a step of 14 % over the largest engine offered', () => {
    const cc = reckon('pi/4 * b^2 * s * 6 / 1000', { b: n(engine['bore']!, 'mm'), s: n(engine['stroke']!, 'mm') });
    expect(cc).toBeCloseTo(2961.27, 1);
    expect(sheet('010-engine/engine-capacity')['capacity']! * 1e6).toBeCloseTo(cc, 6);
    expect(findings.find((f) => f.item === 'engine.step')!.measured!.si).toBeCloseTo(
      cc / n(build['original']!['largest-capacity']!, 'cm^3') - 1,
      9,
    );
  });
  it('the compression ratio follows from burette, gasket, deck and crown', () => {
    const c = note('020')['compression']!;
    const ratio = reckon('1 + (pi/4 * b^2 * s) / (1000 * (h + c) + pi/4 * g^2 * t + pi/4 * b^2 * d)', {
      b: n(engine['bore']!, 'mm'),
      s: n(engine['stroke']!, 'mm'),
      h: n(c['chamber']!, 'cm^3'),
      c: n(c['crown']!, 'cm^3'),
      g: n(c['gasket-bore']!, 'mm'),
      t: n(c['gasket-thickness']!, 'mm'),
      d: n(c['deck']!, 'mm'),
    });
    expect(ratio).toBeCloseTo(9.265, 3);
    expect(sheet('020-engine-assembly/compression-ratio')['ratio']).toBeCloseTo(ratio, 9);
  });
  it('the shaft turns at the limiter over the ratio of fifth, and 3000 rpm in fifth are 125 km/h on the fitted tyres', () => {
    const fifth = n(item(note('040')['ratios']!, '5th')['ratio']!);
    const limiter = n(engine['highest-speed']!);
    expect(sheet('060-driveline/highest-shaft-speed')['speed']).toBeCloseTo(
      reckon('r / g * 2 * pi / 60', { r: limiter, g: fifth }),
      6,
    );
    // Nominal diameter of 195/60R15: 2 · 0.60 · 195 + 15 · 25.4 mm. A loaded tyre rolls 2 to 4 % less far (common practice, no source).
    const kmh = reckon('3000 / g * 12 / 41 * pi * (2 * 0.6 * 195 + 15 * 25.4) * 60 / 1e6', { g: fifth });
    expect(kmh).toBeGreaterThan(120);
    expect(kmh).toBeLessThan(130);
  });
  it('a mount presses with torque over spacing and its share of the weight', () => {
    const m = note('030');
    const pressed = reckon('2 * t * i / s + k * 9.80665', {
      t: n(engine['torque']!),
      i: n(item(note('040')['ratios']!, '1st')['ratio']!),
      s: n(m['spacing']!, 'm'),
      k: n(item(m['mounts']!, 'left')['load']!, 'kg'),
    });
    expect(sheet('030-mounts/left/mount-reaction')['pressed']).toBeCloseTo(pressed, 3);
    // As the note says: bending at the root on the line of the weld, against what the weld holds for each millimetre.
    const line = reckon('2 * (18 * 25^2 + 38^3 / 12) + 24 * (19^2 * pi / 2 + 2 * 19 * 6 + 6^2 * pi / 4)') / 25;
    const bending = reckon('p * 0.095 * 1000 / z', { p: pressed, z: line });
    expect(bending).toBeCloseTo(178, 0);
    expect((Math.hypot(bending, pressed / 150) * 150) / 27000).toBeCloseTo(1, 2);
    expect(reckon('0.6 * 0.6 * 490 * 4 / sqrt(2)')).toBeCloseTo(
      sheet('030-mounts/left-block-side-root/fillet-weld-as4100')['perLength']! / 1000,
      6,
    );
  });
});

describe('masses', () => {
  it('corners add up to the axles of both weighbridge tickets, within their step of 5 kg and the pads', async () => {
    // @ts-expect-error papers are plain JavaScript data
    const { papers } = (await import('../../builds/make/papers/index.mjs')) as {
      papers: Record<string, { body: { table?: { rows: string[][] } }[] }>;
    };
    for (const [state, ticket] of [
      ['was', 'weighbridge-before'],
      ['now', 'weighbridge-after'],
    ] as const) {
      const [front, rear, both] = papers[ticket]!.body.find((b) => b.table)!.table!.rows.map(([, kg]) =>
        parseFloat(kg!),
      );
      expect(Math.abs(axle(state, 'front') - front!)).toBeLessThanOrEqual(5);
      expect(Math.abs(axle(state, 'rear') - rear!)).toBeLessThanOrEqual(5);
      expect(front! + rear!).toBe(both);
      expect(sheet(`190-mass/${state}/corner-masses`)['total']).toBe(axle(state, 'front') + axle(state, 'rear'));
    }
  });
  it('what went out and in explains the weighed change within 3 kg on each axle', () => {
    const parts = mass['parts'] as unknown as { mass: unknown; place: unknown }[];
    const rear = parts.reduce((sum, p) => sum + (n(p.mass, 'kg') * n(p.place, 'mm')) / wheelbase, 0);
    const total = parts.reduce((sum, p) => sum + n(p.mass, 'kg'), 0);
    expect(sheet('190-mass/planned/mass-added')).toMatchObject({
      added: expect.closeTo(total, 9),
      rearAfter: expect.closeTo(axle('was', 'rear') + rear, 6),
    });
    expect(Math.abs(axle('was', 'front') + total - rear - axle('now', 'front'))).toBeLessThan(3);
    expect(Math.abs(axle('was', 'rear') + rear - axle('now', 'rear'))).toBeLessThan(3);
  });
  it('the centre of mass moved forward by 43 mm and stands 547 mm high', () => {
    const behind = (state: 'was' | 'now'): number =>
      (axle(state, 'rear') / (axle(state, 'front') + axle(state, 'rear'))) * wheelbase;
    expect(behind('was') - behind('now')).toBeCloseTo(43.08, 1);
    expect(sheet('190-mass/axle-load-change')['shift']! * 1000).toBeCloseTo(behind('now') - behind('was'), 6);
    const raise = item(mass['now']!['raises']!, 'r620');
    const height = reckon('a + (f - f0) / m * L * cot(asin(r / L))', {
      a: 297 + ((298 - 297) * behind('now')) / wheelbase,
      f: n(raise['front']!, 'kg'),
      f0: axle('now', 'front'),
      m: axle('now', 'front') + axle('now', 'rear'),
      L: wheelbase,
      r: n(raise['raise']!, 'mm'),
    });
    expect(height).toBeCloseTo(546.7, 0);
    expect(sheet('190-mass/now-r620/centre-of-mass-height')['height']! * 1000).toBeCloseTo(height, 0);
  });
  it('five persons and 30 kg leave 8 kg to the gross mass, with 788 and 824 kg on the axles', () => {
    const places = mass['places'] as unknown as { mass: unknown; place: unknown }[];
    const rear =
      axle('now', 'rear') + places.reduce((sum, p) => sum + (n(p.mass, 'kg') * n(p.place, 'mm')) / wheelbase, 0);
    const laden = axle('now', 'front') + axle('now', 'rear') + 5 * 68 + 30;
    expect(n(build['original']!['gvm']!, 'kg') - laden).toBe(8);
    expect([Math.round(laden - rear), Math.round(rear)]).toEqual([788, 824]);
    expect([n(note('130')['laden']!['front']!, 'kg'), n(note('130')['laden']!['rear']!, 'kg')]).toEqual([788, 824]);
  });
});

describe('driveline, links and springs', () => {
  const ride = item(note('060')['stations']!, 'ride');
  const rear = note('070');
  it('joint angles are differences of slopes, and length and offset of the shaft give the same slope', () => {
    const [gearbox, shaft, pinion] = ['gearbox', 'shaft', 'pinion'].map((part) => n(ride[part]!)) as [
      number,
      number,
      number,
    ];
    const plan = reckon('asin(4 / 1096)');
    const joint = (one: number): number =>
      reckon('acos(cos((s - g) * pi / 180) * cos(p)) * 180 / pi', { s: shaft, g: one, p: plan });
    const two = sheet('060-driveline/ride/driveline-two-joints');
    expect((two['joint1']! * 180) / Math.PI).toBeCloseTo(joint(gearbox), 3);
    expect((two['joint2']! * 180) / Math.PI).toBeCloseTo(joint(pinion), 3);
    const at = (joint: string, axis: string): number => n(rear[joint]![axis]!, 'mm');
    const run = at('gearbox-joint', 'forward') - at('pinion-joint', 'forward');
    const rise = at('gearbox-joint', 'height') - at('pinion-joint', 'height');
    expect(reckon('atan(y / x) * 180 / pi', { y: rise, x: run })).toBeCloseTo(shaft, 1);
    expect(Math.hypot(run, rise)).toBeCloseTo(n(note('060')['length']!, 'mm'), 0);
  });
  it('two turns of both lower links, 6 mm, raise the pinion from 1.2 to 2.9 degrees', () => {
    // Two circles about the joints at the body, closed by a search over the turn of the axle at constant height.
    const x = (arm: string, end: string): [number, number] => [
      n(rear[arm]![end]!['forward']!, 'mm'),
      n(rear[arm]![end]!['height']!, 'mm'),
    ];
    const [la, lb, ua, ub] = [x('lower', 'axle'), x('lower', 'body'), x('upper', 'axle'), x('upper', 'body')];
    const centre = n(rear['centre-height']!, 'mm');
    const turned = ([px, pz]: [number, number], turn: number): [number, number] => [
      px * Math.cos(turn) - (pz - centre) * Math.sin(turn),
      centre + px * Math.sin(turn) + (pz - centre) * Math.cos(turn),
    ];
    const shift = (to: [number, number], from: [number, number], length: number): number =>
      to[0] - from[0] - Math.sqrt(length ** 2 - (to[1] - from[1]) ** 2);
    const lower = Math.hypot(lb[0] - la[0], lb[1] - la[1]) - 6;
    const upper = Math.hypot(ub[0] - ua[0], ub[1] - ua[1]);
    let [low, high] = [-0.1, 0.1];
    for (let i = 0; i < 60; i++) {
      const turn = (low + high) / 2;
      if (
        shift(lb, turned(la, turn), lower) - shift(ub, turned(ua, turn), upper) < 0 ===
        shift(lb, turned(la, -0.1), lower) - shift(ub, turned(ua, -0.1), upper) < 0
      )
        low = turn;
      else high = turn;
    }
    expect(n(ride['pinion']!) - (low * 180) / Math.PI).toBeCloseTo(1.2, 1);
  });
  it('the links swing less than their ends allow, and the welds of their bungs hold what the load case asks for', () => {
    const [z1, z2, x1, x2] = [
      n(rear['lower']!['axle']!['height']!),
      n(rear['lower']!['body']!['height']!),
      n(rear['lower']!['axle']!['forward']!),
      n(rear['lower']!['body']!['forward']!),
    ];
    const slope = (up: number): number => reckon('atan((b - a) / x) * 180 / pi', { a: z1 + up, b: z2, x: x2 - x1 });
    expect(slope(0) - slope(n(rear['bump']!))).toBeCloseTo(8, 0);
    expect(slope(-n(rear['droop']!)) - slope(0)).toBeCloseTo(9.3, 1);
    expect(reckon('0.6 * 0.6 * 490 * 4 / sqrt(2) * pi * 32 / 1000')).toBeCloseTo(50, 0);
    expect(Math.hypot(x2 - x1, z2 - z1)).toBeCloseTo(n(item(note('080')['links']!, 'left')['length']!), 0);
  });
  it('spring rates follow from wire, diameter and active coils: G d⁴ / 8 D³ n with 78.85 GPa', () => {
    for (const [end, asked] of [
      ['front', 25.2],
      ['rear', 26.2],
    ] as const) {
      const s = note('090')[end]!['now']!;
      const rate = reckon('78846 * d^4 / (8 * (o - d)^3 * 6.5)', { d: n(s['wire']!, 'mm'), o: n(s['outside']!, 'mm') });
      expect(sheet(`090-suspension/${end}-now/coil-rate`)['rate']! / 1000).toBeCloseTo(rate, 1);
      expect(Math.abs(rate / asked - 1)).toBeLessThan(0.02);
      const corner = item(note('090')['corners']!, `${end}-left`)['now']!;
      const load = asked * (n(s['free-length']!, 'mm') - n(corner['spring-length']!, 'mm'));
      expect(load).toBeCloseTo(end === 'front' ? 3100 : 2384, -1);
    }
  });
});

describe('brakes, body and noise', () => {
  it('the front locks first up to 0.84 with the small cylinders, and up to 0.53 with those that the axle came with', () => {
    const { front, rear } = note('130')['now']! as never as {
      front: Record<string, string>;
      rear: Record<string, string>;
    };
    // Force at the tyre for each pascal: piston area, both sides; a floating calliper presses twice with its piston.
    const share = (cylinder: number): number =>
      reckon('r / (f + r)', {
        f: reckon('2 * pi / 4 * p^2 * 2 * 0.38 * a', { p: n(front['piston'], 'mm'), a: n(front['radius'], 'mm') }),
        r: reckon('2 * pi / 4 * c^2 * 2.3 * a', { c: cylinder, a: n(rear['radius'], 'mm') }),
      });
    const height = sheet('190-mass/now-r620/centre-of-mass-height')['height']!;
    const cross = (rearShare: number): number =>
      reckon('(b / L - s) / (h / L)', {
        b: (axle('now', 'rear') / (axle('now', 'front') + axle('now', 'rear'))) * wheelbase,
        L: wheelbase,
        h: height * 1000,
        s: rearShare,
      });
    const small = share(n(rear['piston'], 'mm'));
    expect(small).toBeCloseTo(0.28, 2);
    expect(share(22.2)).toBeCloseTo(0.35, 2);
    expect(cross(small)).toBeCloseTo(0.84, 2);
    expect(cross(share(22.2))).toBeCloseTo(0.53, 1);
    const chain = sheet('130-brakes/unladen/brake-chain-tandem');
    expect(chain['rearForce']! / (chain['frontForce']! + chain['rearForce']!)).toBeCloseTo(small, 3);
  });
  it('every stop follows from pedal, circuit and mass within 5 %, and the tyres can hold it on the friction of the day', () => {
    const { brakes: test } = note('230') as never as {
      brakes: { stops: Record<string, string>[]; 'surface-friction': string };
    };
    const [system, laden] = [note('130')['now']!, note('130')['laden']!];
    const total = axle('now', 'front') + axle('now', 'rear');
    const persons = 2 * 68;
    const rearLight =
      axle('now', 'rear') + (persons * n(item(mass['places']!, 'front-seats')['place']!, 'mm')) / wheelbase;
    const height = sheet('190-mass/now-r620/centre-of-mass-height')['height']! * 1000;
    for (const stop of test.stops) {
      const isLaden = Number(stop['id']) >= 3 && Number(stop['id']) <= 6;
      const [m, rearMass, h] = isLaden
        ? [n(laden['front']!, 'kg') + n(laden['rear']!, 'kg'), n(laden['rear']!, 'kg'), n(laden['cg-height']!, 'mm')]
        : [total + persons, rearLight, height];
      const open = (which: string): number => (String(stop['failure'] ?? '').startsWith(which) ? 0 : 1);
      // Booster: force on the pushrod times its ratio, up to what it adds at most. Rolling radius: 3.05 diameters for one turn.
      const line = reckon('(f * k + min(f * k * (b - 1), top)) * e / (pi / 4 * d^2)', {
        f: n(stop['pedal-force'], 'N'),
        k: n(system['pedal-ratio']!),
        b: n(system['booster-ratio']!),
        top: n(system['booster-assist']!, 'N'),
        e: n(system['efficiency']!),
        d: n(system['bore']!, 'mm'),
      });
      const force = (piston: number, factor: number, radius: number): number =>
        reckon('2 * pi / 4 * p^2 * c * a / (615 * 3.05 / 2 / pi) * q', { p: piston, c: factor, a: radius, q: line });
      const [front, rear] = [
        force(n(system['front']!['piston']!, 'mm'), 0.76, n(system['front']!['radius']!, 'mm')) * open('front'),
        force(n(system['rear']!['piston']!, 'mm'), 2.3, n(system['rear']!['radius']!, 'mm')) * open('rear'),
      ];
      const measured = n(stop['deceleration'], 'm/s^2') / ((front + rear) / m);
      expect(measured, `stop ${stop['id']}`).toBeGreaterThan(0.95);
      expect(measured, `stop ${stop['id']}`).toBeLessThan(1);
      const z = n(stop['peak'], 'm/s^2') / 9.80665;
      const onRear = rearMass / m - (z * h) / wheelbase;
      const needed = [(z * front) / (front + rear) / (1 - onRear), (z * rear) / (front + rear) / onRear];
      expect(Math.max(...needed), `stop ${stop['id']}`).toBeLessThan(n(test['surface-friction']));
    }
  });
  it('a couple of 1500 N on 1200 mm turns the body by its twist: 293 and 310 kN·m a radian', () => {
    for (const [state, stiffness] of [
      ['was', 293],
      ['now', 310],
    ] as const) {
      const at = item(note('260')['twist']![state]!, 'up-1500');
      const twist = reckon('((a - b) / 1150) - ((c - d) / 1150)', {
        a: n(at['front-left']!, 'mm'),
        b: n(at['front-right']!, 'mm'),
        c: n(at['rear-left']!, 'mm'),
        d: n(at['rear-right']!, 'mm'),
      });
      const one = reckon('1500 * 1.2 / t / 1000', { t: twist });
      expect(Math.abs(one / stiffness - 1)).toBeLessThan(0.01);
      expect(Math.abs(one / (sheet(`260-test-twist/${state}/twist-test`)['stiffness']! / 1000) - 1)).toBeLessThan(0.01);
    }
  });
  it('the noise readings have an energy mean of 89.04 dB, and 3900 rpm are three quarters of 5200', () => {
    const outlet = item(note('220')['noise']!['outlets']!, 'rear');
    const levels = /\[(.*)\]/.exec(String(outlet['readings']!['value']))![1]!.split(',').map(Number);
    const mean = reckon('10 * log10(mean(10^(l1/10), 10^(l2/10), 10^(l3/10)))', {
      l1: levels[0],
      l2: levels[1],
      l3: levels[2],
    });
    expect(mean).toBeCloseTo(89.035, 3);
    expect(sheet('220-test-noise/rear/energy-mean')['mean']).toBeCloseTo(mean, 6);
    expect(n(note('220')['noise']!['test-speed']!) / n(note('220')['noise']!['rated-speed']!)).toBe(0.75);
  });
  it('the crossmember: thickness to the rail, and bending with the tube on edge as the note says', () => {
    const tube = item(note('050')['pieces']!, 'crossmember');
    // The rail was measured at three places: the thinnest counts.
    expect(tube['joined-to']).toMatchObject({ value: '[1.48, 1.50, 1.49] mm' });
    expect(sheet('050-crossmember/crossmember/thickness-ratio')['ratio']).toBeCloseTo(2.48 / 1.48, 9);
    // Sharp corners: a little more than the tube with its radii, of which the note speaks (4483 mm³).
    const sharp = reckon('(30 * 50^3 - (30 - 2 * t) * (50 - 2 * t)^3) / 6 / 50', { t: n(tube['now']!['wall']!, 'mm') });
    expect(sharp).toBeGreaterThan(4483);
    expect(sharp).toBeLessThan(4483 * 1.09);
    expect(reckon('3 * 1400 * 520 / 4 / 4483')).toBeCloseTo(122, 0);
  });
});

describe('outcomes', () => {
  it('say conforms of a value against a requirement and of nothing else', () => {
    const conforms = findings.filter((f) => f.outcome === 'conforms');
    expect(conforms.length).toBeGreaterThan(100);
    for (const f of conforms) {
      expect(f, f.id).toMatchObject({ of: 'requirement', measured: expect.anything(), limit: expect.anything() });
      expect(f.limit!.basis, f.id).not.toBe('practice');
    }
  });

  it('are of every class; what does not conform or is outside usual practice has the word of the certifier', () => {
    expect(new Set(findings.map((f) => f.of)).size).toBe(Object.keys(outcomesByClass).length);
    for (const outcome of [
      'conforms',
      'does-not-conform',
      'limit-not-confirmed',
      'not-shown',
      'not-applicable',
    ] as const)
      expect(findings.filter((f) => f.outcome === outcome).length, outcome).toBeGreaterThan(0);
    const against = findings.filter((f) => resultOf(f.outcome) === 'against' && f.of !== 'date');
    expect(against.map((f) => f.concession?.word)).toEqual(against.map(() => 'accepted'));
    expect(findings.filter((f) => f.item === 'query').map((f) => f.outcome)).toEqual(['answered', 'answered']);
  });
});
