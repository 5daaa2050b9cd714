import type { Element } from 'hast';
import { across } from './dimension.js';
import { drawing, widths } from './frame.js';
import { hatchDefs, hatched } from './hatch.js';
import { box, circle, line, type Point, paper, polyline } from './pen.js';
import { em, type Size, sized, widthOf, word } from './words.js';

/** One setting of an adjuster: length between the end joints and thread engaged at both ends. */
interface Setting {
  says: string;
  length: Size;
  a: Size;
  b: Size;
}

export interface AdjustableLink {
  name: string;
  title: string;
  /** From the shortest to the longest. */
  settings: readonly Setting[];
  /** Thread engaged when screwed home, m: the depth that is drawn for the tapped hole. */
  home: { a: number; b: number };
  /** Least engagement allowed. */
  least?: { a: Size; b: Size } | undefined;
}

const centre = widths.full / 2;
/** Half the body as it is drawn, its middle being broken out; half heights of body and thread. */
const [half, body, thread] = [39, 5, 2.6];
const [deepest, farthest] = [31, 20];
const [neck, eye] = [3, 4.6];
const row = 30;

/** The link at each setting, one under the other and the ends to one scale, cut open to show the threads. */
export function adjustableLink({ name, title, settings, home, least }: AdjustableLink): Element {
  const engaged = settings.flatMap((s) => [s.a.si, s.b.si]);
  const exposed = settings.flatMap((s) => [home.a - s.a.si, home.b - s.b.si]);
  const scale = Math.min(deepest / Math.max(home.a, home.b, ...engaged), farthest / Math.max(1e-6, ...exposed));
  const height = row * settings.length + 9;
  return drawing(
    { name, title, says: says(settings, least), width: widths.full, height },
    hatchDefs(name, 'rising', 'falling'),
    settings.flatMap((s, i) => {
      const y = row * i + 17;
      const ends = [
        { side: -1 as const, size: s.a, home: home.a, least: least?.a, letter: 'A' },
        { side: 1 as const, size: s.b, home: home.b, least: least?.b, letter: 'B' },
      ].map((e) => drawEnd(name, e, y, scale, i === 0));
      return [
        word(2, y - 12.6, s.says, 'start', true),
        ...across([ends[0]!.eye, y], [ends[1]!.eye, y], y - 10, sized(s.length)),
        ...ends.flatMap((e) => e.drawn),
      ];
    }),
    word(
      2,
      height - 2.2,
      'Left-hand thread at one end, right-hand at the other. Body broken out; both ends to one scale.',
    ),
  );
}

interface End {
  side: 1 | -1;
  size: Size;
  home: number;
  least: Size | undefined;
  letter: string;
}

/** One end: half of the body with its tapped hole, the threaded rod and the eye of the joint. */
function drawEnd(
  name: string,
  { side, size, home, least, letter }: End,
  y: number,
  scale: number,
  first: boolean,
): { eye: number; drawn: Element[] } {
  const face = centre + side * half;
  const inwards = (d: number) => face - side * d;
  const tip = inwards(size.si * scale);
  const bottom = inwards(Math.max(home, size.si) * scale + 1.5);
  const shoulder = inwards(-Math.max(0, home - size.si) * scale);
  const middle = shoulder + side * (neck + eye);
  const from = (a: number, b: number, top: number, high: number, stroke: Parameters<typeof box>[3]) =>
    box([Math.min(a, b), top], Math.abs(b - a), high, stroke);
  const mark = least ? inwards(least.si * scale) : 0;
  return {
    eye: middle,
    drawn: [
      polyline([[face, y - body], ...brokenEdge(side, y), [face, y + body]], {
        weight: 'outline',
        fill: hatched(name, side === -1 ? 'rising' : 'falling'),
        close: true,
      }),
      from(face, bottom, y - thread, 2 * thread, { weight: 'line', fill: paper }),
      from(shoulder, tip, y - thread + 0.5, 2 * thread - 1, { weight: 'outline', fill: paper }),
      ...threadLines(shoulder, tip, y, side),
      polyline(
        [
          [shoulder, y - thread],
          [shoulder, y + thread],
          [middle - side * 2, y + thread - 0.4],
          [middle - side * 2, y - thread + 0.4],
        ],
        { weight: 'outline', fill: paper, close: true },
      ),
      circle([middle, y], eye, { weight: 'outline', fill: paper }),
      circle([middle, y], eye / 2, { weight: 'line' }),
      ...cross(middle, y),
      word(middle, y + eye + 0.95 * em, letter, 'middle'),
      ...across([face, y + body], [tip, y + body], y + body + 4, sized(size)),
      ...(least ? [line([mark, y - body - 1.5], [mark, y + body], { weight: 'thin', dash: 'centre' })] : []),
      ...(least && first ? [word(leastPlace(mark, side, sized(least)), y - body - 2.2, sized(least), 'middle')] : []),
    ],
  };
}

/** The label of the least engagement stays on its own half. */
function leastPlace(mark: number, side: 1 | -1, text: string): number {
  const room = widthOf(text) / 2 + 1;
  return side === -1 ? Math.min(mark, centre - room) : Math.max(mark, centre + room);
}

/** Crests of the thread; they lean one way for a right-hand thread and the other for a left-hand one. */
function threadLines(a: number, b: number, y: number, side: 1 | -1): Element[] {
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  const high = thread - 0.5;
  const count = Math.max(0, Math.floor((to - from - 1.2) / 1.2));
  return Array.from({ length: count }, (_, i) => {
    const x = from + 1.2 * (i + 1);
    return line([x + side * 0.35, y - high], [x - side * 0.35, y + high], { weight: 'thin' });
  });
}

function cross(x: number, y: number): Element[] {
  const arms: [Point, Point][] = [
    [
      [x - eye - 1.2, y],
      [x + eye + 1.2, y],
    ],
    [
      [x, y - eye - 1.2],
      [x, y + eye + 0.4],
    ],
  ];
  return arms.map(([a, b]) => line(a, b, { weight: 'thin', dash: 'centre' }));
}

/** Where half of the body ends: its middle is left out. */
function brokenEdge(side: 1 | -1, y: number): Point[] {
  const x = centre + side * 3;
  return [
    [x, y - body],
    [x + 0.9, y - body / 3],
    [x - 0.9, y + body / 3],
    [x, y + body],
  ];
}

function says(settings: readonly Setting[], least: AdjustableLink['least']): string {
  const rows = settings.map((s) => `${s.says}: ${[s.length, s.a, s.b].map(sized).join(', ')}`).join('. ');
  return `${rows}.${least ? ` Least engagement: ${sized(least.a)}, ${sized(least.b)}.` : ''}`;
}
