import { straightLine } from '../../../calc/beams/least-squares.js';
import type { Run } from '../../../calc/run.js';
import { type LoadTest, loadTest } from '../load-test.js';
import { type Drawers, rows, si, size } from './values.js';

type Reading = LoadTest['points'][number];

/** A load below the one before it is being taken off. */
const inOrder = (points: readonly Reading[]): Reading[] =>
  points.map((p, i) => ({ ...p, unloading: i > 0 && p.load < points[i - 1]!.load }));

const drawn =
  (run: Run, axes: Pick<LoadTest, 'load' | 'response'>, readings: readonly Reading[]) =>
  (name: string, title: string) => {
    const line = straightLine(readings.map((p) => [p.load, p.response] as const));
    return loadTest({ name, title, ...axes, points: inOrder(readings), line, stiffness: size(run, 'stiffness') });
  };

export const testDrawers: Drawers = {
  'twist-test': (run) => {
    const angle = (l: Readonly<Record<string, number>>, end: 'front' | 'rear') =>
      Math.atan((l[`${end}Left`]! - l[`${end}Right`]!) / si(run, `${end}Width`));
    const readings = rows(run, 'loads').map((l) => ({
      load: l['force']! * si(run, 'arm'),
      response: angle(l, 'front') - angle(l, 'rear'),
    }));
    return {
      caption: 'Torque over twist between the stations, with the straight line through the readings.',
      draw: drawn(run, { load: { symbol: 'T', unit: 'N·m' }, response: { symbol: 'θ', unit: 'deg' } }, readings),
    };
  },
  'beaming-test': (run) => {
    const readings = rows(run, 'loads').map((l) => ({
      load: l['force']!,
      response: l['middle']! - (l['front']! + l['rear']!) / 2,
    }));
    return {
      caption: 'Load over deflection of the body, with the straight line through the readings.',
      draw: drawn(run, { load: { symbol: 'F', unit: 'N' }, response: { symbol: 'δ', unit: 'mm' } }, readings),
    };
  },
};
