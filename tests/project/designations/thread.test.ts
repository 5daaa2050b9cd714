import { describe, expect, it } from 'vitest';
import { coarse, fine } from '../../../src/calc/fasteners/iso898.js';
import { unifiedThreads } from '../../../src/calc/fasteners/unified-threads.js';
import { readThread } from '../../../src/project/designations/thread.js';
import { metricPitches, unified } from '../../../src/project/designations/thread-sizes.js';
import { laws, problem, value } from './laws.js';

const mm = (x: number) => x * 1000;
const inch = (x: number) => x / 0.0254;

describe('metric threads', () => {
  /** Pitch diameters of ISO 724 [from memory], from diameter and pitch as read: d2 = d − 0.649519 P. */
  it.each([
    ['M5', 4.48],
    ['M6', 5.35],
    ['M8', 7.188],
    ['M10', 9.026],
    ['M12', 10.863],
    ['M16', 14.701],
    ['M20', 18.376],
    ['M22', 20.376],
    ['M24', 22.051],
  ])('%s has its coarse pitch: pitch diameter %f mm', (text, d2) => {
    const thread = value(readThread(text));
    expect(thread.pitchSeries).toBe('coarse');
    expect(Math.abs(mm(thread.diameter) - 0.649519 * mm(thread.pitch) - d2)).toBeLessThanOrEqual(0.0006);
  });

  /** Stress areas of ISO 898-1: the coarse ones as quoted in tables of proof loads [read], the fine ones from memory. */
  it.each([
    ['M8x1.25', 36.6],
    ['M12x1.75', 84.3],
    ['M16', 157],
    ['M24x3', 353],
    ['M8x1', 39.2],
    ['M10x1.25', 61.2],
    ['M12x1.5', 88.1],
    ['M18x1.5', 216],
    ['M24x2', 384],
  ])('%s has a stress area of %f mm²', (text, area) => {
    const { diameter, pitch } = value(readThread(text));
    const As = (Math.PI / 4) * mm(diameter - 0.938194 * pitch) ** 2;
    expect(Math.abs(As - area)).toBeLessThanOrEqual(area >= 100 ? 0.5 : 0.05);
  });

  it('agree with the table of bolt loads', () => {
    for (const row of [...coarse, ...fine]) {
      expect(value(readThread(row.thread))).toMatchObject({ text: row.thread, diameter: row.d / 1000 });
      expect(mm(value(readThread(row.thread)).pitch)).toBeCloseTo(row.P, 12);
    }
  });

  it('list every coarse pitch of ISO 261 first and the largest', () => {
    for (const [d, pitches] of Object.entries(metricPitches)) {
      expect(pitches.map(Number)).toEqual(pitches.map(Number).toSorted((a, b) => b - a));
      expect(value(readThread(`M${d}`)).text).toBe(`M${d}x${pitches[0]}`);
    }
  });

  it.each([
    ['m12 × 1.75', 'M12x1.75', 'right'],
    ['M12x1.25-6g', 'M12x1.25', 'right'],
    ['M12x1.75-LH', 'M12x1.75 LH', 'left'],
    ['M12 LH', 'M12x1.75 LH', 'left'],
    ['M12x1.50 left hand', 'M12x1.5 LH', 'left'],
    ['M12x1.6 special', 'M12x1.6 special', 'right'],
    ['M13x1 special LH', 'M13x1 special LH', 'left'],
  ])('%s is %s', (written, text, hand) => {
    expect(value(readThread(written))).toMatchObject({ text, hand, series: 'metric' });
  });

  it.each([
    ['M12x1.57', 'pitches listed for M12 are 1.75, 1.5, 1.25, 1', [4, 8]],
    ['M13', 'not in ISO 261', [0, 3]],
    ['M13 special', 'needs its pitch', [0, 11]],
    ['M12x12 special', 'cannot be that coarse', [4, 6]],
    ['M', 'write M, diameter', [0, 1]],
  ])('%s is refused', (text, hint, at) => {
    expect(problem(readThread(text)).hint).toContain(hint);
    expect(problem(readThread(text)).at).toEqual(at);
  });
});

describe('Unified threads', () => {
  /** Stress areas of ASME B1.1 [from memory]: A_t = 0.7854 (D − 0.9743/n)². */
  it.each([
    ['1/4-20 UNC', 0.0318],
    ['3/8-16 UNC', 0.0775],
    ['1/2-13 UNC', 0.1419],
    ['3/4-10 UNC', 0.334],
    ['1-8 UNC', 0.606],
    ['7/16-20 UNF', 0.1187],
    ['1/2-20 UNF', 0.1599],
    ['3/4-16 UNF', 0.373],
    ['1-12 UNF', 0.663],
  ])('%s has a stress area of %f in²', (text, area) => {
    const { diameter, pitch } = value(readThread(text));
    expect(Math.abs((Math.PI / 4) * inch(diameter - 0.9743 * pitch) ** 2 - area)).toBeLessThanOrEqual(
      area > 0.2 ? 0.0005 : 0.00015,
    );
  });

  /** Basic major diameters as quoted in a chart of Unified threads [read]. */
  it.each([
    ['#0-80', 0.06],
    ['#5-44', 0.125],
    ['#10-32', 0.19],
    ['10-24 UNC', 0.19],
    ['2-56', 0.086],
    ['5/16-24', 0.3125],
    ['1-1/8-7', 1.125],
    ['2-4.5 UNC', 2],
  ])('%s has a diameter of %f in', (text, D) => {
    expect(inch(value(readThread(text)).diameter)).toBeCloseTo(D, 12);
  });

  it('agree with the threads that the sheets know', () => {
    for (const { thread, D, n } of unifiedThreads) {
      const read = value(readThread(thread));
      expect(read.text).toBe(thread);
      expect(inch(read.diameter)).toBeCloseTo(D, 12);
      expect(inch(read.pitch)).toBeCloseTo(1 / n, 12);
    }
  });

  it('read every size of every series as itself', () => {
    for (const [series, sizes] of Object.entries(unified)) {
      for (const [size, n] of Object.entries(sizes))
        expect(value(readThread(`${size}-${n}`)).text).toBe(`${size}-${n} ${series}`);
    }
  });

  it.each([
    ['3/4 UNF', '3/4-16 UNF'],
    ['3/4"-16 UNF', '3/4-16 UNF'],
    ['1 1/8-12', '1-1/8-12 UNF'],
    ['5/8-18 UNF LH', '5/8-18 UNF LH'],
    ['1/2-13 UNC-2A', '1/2-13 UNC'],
    ['1-14 UNS', '1-14 UNS'],
  ])('%s is %s', (written, text) => {
    expect(value(readThread(written)).text).toBe(text);
  });

  /** ASME B1.1 has 12 threads for each inch in the fine series of 1 in; some charts mark 1-14 as UNF. */
  it.each([
    ['1-14 UNF', '1-12 UNF'],
    ['3/4-16 UNC', '3/4-16 UNF'],
    ['3/4-15', '3/4-10 UNC'],
    ['3/4', '3/4-10 UNC, 3/4-16 UNF, 3/4-20 UNEF'],
    ['7/11-16', 'no Unified thread'],
    ['1/4 BSP', 'Whitworth'],
    ['3/4-0 UNS', 'cannot be that coarse'],
    ['3/4-', 'write size'],
  ])('%s is refused', (text, hint) => {
    expect(problem(readThread(text)).hint).toContain(hint);
  });
});

describe('pipe threads', () => {
  /** E0 = D − (0.05 D + 1.1)/n, ASME B1.20.1, as quoted in tables of pipe threads [read]. */
  it.each([
    ['1/8-27 NPT', 0.36351],
    ['1/4-18 NPT', 0.47739],
    ['3/8-18 NPT', 0.61201],
    ['1/2 NPT', 0.75843],
    ['1-11.5 NPT', 1.21363],
    ['1-1/4 NPT', 1.55713],
    ['2 NPT', 2.26902],
  ])('%s has a pitch diameter of %f in at its small end', (text, E0) => {
    const { diameter, pitch } = value(readThread(text));
    const [D, P] = [inch(diameter), inch(pitch)];
    expect(Math.abs(D - (0.05 * D + 1.1) * P - E0)).toBeLessThanOrEqual(0.00001);
  });

  it('have one number of threads for each size', () => {
    expect(problem(readThread('1/4-20 NPT'))).toMatchObject({
      hint: '1/4 NPT has 18 threads for each inch: write 1/4-18 NPT',
      at: [4, 6],
    });
    expect(problem(readThread('5/8 NPT')).hint).toContain('1/16, 1/8');
  });
});

it('threads obey the laws of readers', () => {
  laws(readThread, [
    'M',
    '12',
    '1',
    'x',
    '1.75',
    '3/4',
    '-',
    '16',
    '#',
    '10',
    ' ',
    'UNF',
    'UNC',
    'UNS',
    'NPT',
    'LH',
    'special',
    '6g',
    '2A',
    '0',
    '"',
  ]);
});
