import type { Element } from 'hast';
import { showNumber } from '../../units/show.js';
import { above, below, type Chart, chart, leftOf } from './chart.js';
import { drawing, widths } from './frame.js';
import { circle, ink, line, type Point, paper, polyline, type Stroke } from './pen.js';
import { placer, type Segment } from './place.js';
import { em, lineHeight, type Size, shortened, sized, word } from './words.js';

/** A vehicle in one state of load, as its brake distribution depends on it. */
export interface LoadState {
  /** `laden`, `unladen` or another word of the builder. */
  says: string;
  /** Centre of mass ahead of the rear axle over wheelbase: the front axle's share of the weight at rest. */
  toRear: number;
  /** Height of the centre of mass over wheelbase. */
  height: number;
  /** Braking rate at which the installed distribution is ideal. */
  crossing: Size;
}

export interface BrakeDistribution {
  name: string;
  title: string;
  /** Front axle's share of the braking force as installed. */
  frontShare: Size;
  states: readonly LoadState[];
}

const marked = [0.3, 0.6, 0.8] as const;
const dashes: readonly Stroke[] = [
  { weight: 'line' },
  { weight: 'line', dash: 'hidden' },
  { weight: 'line', dash: 'ghost' },
];
const [plotRight, legend] = [112, 118];

/** Braking forces over weight at a braking rate, where both axles use the same adhesion. */
const ideal = ({ toRear, height }: LoadState, z: number): Point => [
  z * (toRear + z * height),
  z * (1 - toRear - z * height),
];

/** Installed line against the ideal curves, both as braking force over weight. */
export function brakeDistribution({ name, title, frontShare, states: all }: BrakeDistribution): Element {
  const states = all.map((s) => ({ ...s, says: shortened(s.says, 26) }));
  const share = frontShare.si;
  const greatest = 1;
  const curves = states.map((s) =>
    Array.from({ length: 61 }, (_, i) => ideal(s, (i / 60) * greatest)).filter((p) => p[1] >= 0),
  );
  const yTo = Math.max(0.2, ...curves.flat().map((p) => p[1])) * 1.25;
  const xTo = Math.max(0.85, ...curves.flat().map((p) => p[0])) * 1.03;
  const axes = { x: [0, xTo], y: [0, yTo] } as const;
  const top = above + 2;
  const plot = chart({
    ...axes,
    xSays: 'braking force of the front axle over weight',
    ySays: 'braking force of the rear axle over weight',
    room: { left: leftOf(axes.y), right: plotRight, top, bottom: top + 74 },
  });
  const height = plot.room.bottom + below;
  const end = installedEnd(share, xTo, yTo);
  const inside = states.filter((s) => s.crossing.si > 0 && s.crossing.si <= greatest);
  const marks = inside.map((s) => ({
    at: plot.at(...ideal(s, s.crossing.si)),
    text: sized(s.crossing) + (states.length > 1 ? ` ${s.says}` : ''),
  }));
  const lines: Segment[] = [
    ...curves.flatMap((c) => c.slice(1).map((p, i): Segment => [plot.at(...c[i]!), plot.at(...p)])),
    [plot.at(0, 0), plot.at(...end)],
  ];
  const places = placer({ ...plot.room, top: plot.room.top + 1, bottom: plot.room.bottom - 1 }, [
    ...lines,
    ...marked.map((z): Segment => rateLine(z, plot, xTo, yTo)),
  ]);
  const rates = marked.flatMap((z) => rateMark(z, plot, xTo, yTo));
  for (const { keep } of rates) places.keepOff(keep);
  for (const [x, y] of [
    ...marks.map((m) => m.at),
    ...states.flatMap((s) => marked.map((z) => plot.at(...ideal(s, z)))),
  ])
    places.keepOff({ left: x - 1, right: x + 1, top: y - 1, bottom: y + 1 });
  return drawing(
    { name, title, says: says(frontShare, all), width: widths.full, height },
    plot.drawn,
    rates.flatMap((r) => r.drawn),
    curves.map((c, i) =>
      polyline(
        c.map((p) => plot.at(...p)),
        dashes[i % dashes.length],
      ),
    ),
    line(plot.at(0, 0), plot.at(...end), { weight: 'outline' }),
    states.flatMap((s) => marked.flatMap((z) => dot(s, z, plot))),
    marks.flatMap(({ at, text }) => [
      circle(at, 1.1, { weight: 'thin', fill: ink }),
      ...places.put(at, text, Math.PI / 8),
    ]),
    ...key(frontShare, states, greatest),
  );
}

function installedEnd(share: number, xTo: number, yTo: number): Point {
  if (share <= 0) return [0, yTo];
  const k = (1 - share) / share;
  return k * xTo <= yTo ? [xTo, k * xTo] : [yTo / k, yTo];
}

/** Both axles together brake at z along this line, as far as it lies in the plot. */
function rateLine(z: number, plot: Chart, xTo: number, yTo: number): Segment {
  return [plot.at(Math.max(0, z - yTo), Math.min(z, yTo)), plot.at(Math.min(z, xTo), Math.max(0, z - xTo))];
}

function rateMark(z: number, plot: Chart, xTo: number, yTo: number) {
  const [from, to] = rateLine(z, plot, xTo, yTo);
  const text = `z = ${showNumber(z)}`;
  const [x, y] = [to[0] - 3.6, to[1] - 1.4];
  return [
    {
      drawn: [line(from, to, { weight: 'thin', dash: 'ghost' }), word(x, y, text, 'end')],
      keep: { left: x - 13, right: x + 1, top: y - em, bottom: y + 0.5 },
    },
  ];
}

function dot(state: LoadState, z: number, plot: Chart): Element[] {
  const p = ideal(state, z);
  return p[1] >= 0 ? [circle(plot.at(...p), 0.8, { weight: 'line', fill: paper })] : [];
}

function key(frontShare: Size, states: readonly LoadState[], greatest: number): Element[][] {
  const entries: { stroke?: Stroke; texts: string[] }[] = [
    { stroke: { weight: 'outline' }, texts: [`installed, ${sized(frontShare)}`] },
    ...states.map((s, i) => ({ stroke: dashes[i % dashes.length]!, texts: [`ideal, ${s.says}`] })),
    { stroke: { weight: 'thin', dash: 'ghost' }, texts: ['equal braking rate z'] },
    { texts: ['Installed above ideal: the rear', 'axle locks first; below it,', 'the front axle.'] },
    ...states
      .filter((s) => s.crossing.si <= 0)
      .map((s) => ({ texts: [`${s.says}: ${sized(s.crossing)},`, 'the rear locks first throughout'] })),
    ...states
      .filter((s) => s.crossing.si > greatest)
      .map((s) => ({ texts: [`${s.says}: ${sized(s.crossing)},`, 'beyond the drawing'] })),
  ];
  let y = above + 6;
  return entries.map(({ stroke, texts }) => {
    const from = y;
    y += lineHeight * texts.length + 1.4;
    return [
      ...(stroke ? [line([legend, from - 1], [legend + 8, from - 1], stroke)] : []),
      ...texts.map((t, i) => word(stroke ? legend + 10 : legend, from + i * lineHeight, t)),
    ];
  });
}

function says(frontShare: Size, states: readonly LoadState[]): string {
  const each = states.map(
    (s) =>
      `${s.says}: ${sized(s.crossing)}; ideal front share ${marked.map((z) => `${showNumber((s.toRear + z * s.height) * 100, { digits: 3 })} % at z = ${z}`).join(', ')}`,
  );
  return `Installed ${sized(frontShare)}. ${each.join('. ')}. Above the crossing z* the rear axle uses more adhesion than the front.`;
}
