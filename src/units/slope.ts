import { listItems } from './parts.js';
import { type QuantityProblem, quoted } from './problem.js';
import { meanOf, type Quantity, readQuantity } from './quantity.js';

/**
 * Angles that carry their direction in words. Positive is, for each axis:
 *
 * - pitch: the front end is the higher (nose up, down to the rear)
 * - plan: followed from front to rear, the line runs to the left of the vehicle
 * - camber: the top leans outwards
 * - caster: the top of the steering axis leans to the rear
 * - toe: the fronts of the wheels point inwards
 */
export type Axis = 'pitch' | 'plan' | 'camber' | 'caster' | 'toe';

const positive: Readonly<Record<Axis, string>> = {
  pitch: 'front end higher',
  plan: 'to the left, followed from front to rear',
  camber: 'top leaning outwards',
  caster: 'top leaning to the rear',
  toe: 'fronts of the wheels pointing inwards',
};

const directions: Readonly<Record<string, readonly [axis: Axis, sign: 1 | -1 | 0]>> = {
  'down to the rear': ['pitch', 1],
  'up to the front': ['pitch', 1],
  'nose up': ['pitch', 1],
  'front up': ['pitch', 1],
  'rear down': ['pitch', 1],
  'up to the rear': ['pitch', -1],
  'down to the front': ['pitch', -1],
  'nose down': ['pitch', -1],
  'front down': ['pitch', -1],
  'rear up': ['pitch', -1],
  level: ['pitch', 0],
  'to the left': ['plan', 1],
  'to the right': ['plan', -1],
  straight: ['plan', 0],
  'top out': ['camber', 1],
  'top in': ['camber', -1],
  upright: ['camber', 0],
  'top to the rear': ['caster', 1],
  'top to the front': ['caster', -1],
  'toe in': ['toe', 1],
  'toe out': ['toe', -1],
};

/** The words that are read, for prompts and hints. */
export const directionWords: readonly string[] = Object.keys(directions);

/** The words that are read for one axis. */
export const directionWordsOf = (axis: Axis): readonly string[] =>
  directionWords.filter((words) => directions[words]![0] === axis);

interface Slope {
  /** Its `si`, `exact` and `readings` carry the sign of the convention. */
  quantity: Quantity;
  /** In its one printed spelling. */
  direction: string;
  axis: Axis;
  /** What a positive sign says, for the reader. */
  positive: string;
}

const longestFirst = directionWords.toSorted((a, b) => b.length - a.length);
const patterns = longestFirst.map((words) => words.replaceAll(' the ', ' (?:the )?').replaceAll(' ', '[\\s-]+'));
const DIRECTION = new RegExp(`(?<=[\\s°′'’])(?:${patterns.map((p) => `(${p})`).join('|')})\\s*$`, 'iu');

/** Whether a text or a reading of a list ends in words of direction, and so can be nothing but a slope. */
export const endsInDirection = (text: string): boolean => directionAt(text) !== null || eachHasDirection(text);

const directionAt = (text: string): RegExpExecArray | null => (text.length > 500 ? null : DIRECTION.exec(text));

type ReadSlope = ({ ok: true } & Slope) | { ok: false; problem: QuantityProblem };

/**
 * Reads `3.2 deg down to the rear` or `2 ± 0.1 deg nose up`. A sign does not stand for the words, because nobody agrees
 * which way is positive. Of readings such as `[2.9 deg nose up, 0.1 deg nose down]` each has its own direction, unless one
 * stands behind the list; the mean is that of the signed angles.
 */
export function readSlope(text: string): ReadSlope {
  return eachHasDirection(text) ? readEach(text) : readOne(text);
}

/** Whether the readings of a list carry words of direction; otherwise those behind it hold for all. */
function eachHasDirection(text: string): boolean {
  if (text.length > 500 || !text.trimStart().startsWith('[')) return false;
  const list = listItems(text);
  return !('code' in list) && list.items.some((item) => directionAt(item.text));
}

function readEach(text: string): ReadSlope {
  const list = listItems(text);
  if ('code' in list) return { ok: false, problem: list };
  const { behind } = list;
  if (behind.text !== '') {
    const hint = 'write the direction once: at each reading, or behind the list';
    return { ok: false, problem: { code: 'direction', found: quoted(behind.text), expected, hint, at: behind.at } };
  }
  const each: Slope[] = [];
  for (const item of list.items) {
    const read = readOne(item.text);
    if (!read.ok) {
      const [from, to] = read.problem.at;
      return { ok: false, problem: { ...read.problem, at: [item.at[0] + from, item.at[0] + to] } };
    }
    if (each[0] && read.axis !== each[0].axis) {
      const hint = `end with one of: ${directionWordsOf(each[0].axis).join(', ')}`;
      return { ok: false, problem: { code: 'direction', found: quoted(read.direction), expected, hint, at: item.at } };
    }
    each.push(read);
  }
  const quantity = meanOf(
    each.map((slope) => slope.quantity),
    text,
  );
  const way = (si: number) => Math.sign(si);
  const like = each.find((slope) => way(slope.quantity.si) === way(quantity.si)) ?? each[0]!;
  return { ok: true, ...like, quantity };
}

function readOne(text: string): ReadSlope {
  const words = directionAt(text);
  const angle = readQuantity(words ? text.slice(0, words.index) : text, 'deg');
  if (!words) return { ok: false, problem: noDirection(text, angle) };
  if (!angle.ok) return angle;
  const direction = longestFirst[words.slice(1).findIndex((group) => group !== undefined)]!;
  const [axis, sign] = directions[direction]!;
  const { exact, readings = [] } = angle.quantity;
  const negative = exact.lt(0) || readings.some((x) => x < 0);
  const turns = !exact.isZero() || readings.some((x) => x !== 0);
  if (negative || (sign === 0 && turns)) return { ok: false, problem: contradiction(text, negative, direction) };
  return { ok: true, quantity: turned(angle.quantity, sign, text), direction, axis, positive: positive[axis] };
}

/** Reads an angle about one axis; words that belong to another are refused. */
export function readSlopeAbout(axis: Axis): typeof readSlope {
  return (text) => {
    const read = readSlope(text);
    if (!read.ok || read.axis === axis) return read;
    const words = directionWordsOf(axis);
    const at = [Math.max(0, text.toLowerCase().lastIndexOf(read.direction)), text.length] as const;
    return {
      ok: false,
      problem: {
        code: 'direction',
        found: quoted(read.direction),
        expected: `an angle that is ${positive[axis]}, or the other way`,
        hint: `end with one of: ${words.join(', ')}`,
        at,
      },
    };
  };
}

function turned(quantity: Quantity, sign: 1 | -1 | 0, text: string): Quantity {
  if (sign !== -1 || quantity.exact.isZero()) return { ...quantity, text: text.trim() };
  const { readings } = quantity;
  const exact = quantity.exact.negated();
  return {
    ...quantity,
    text: text.trim(),
    exact,
    si: exact.toNumber(),
    ...(readings && { readings: readings.map((x) => -x) }),
  };
}

const expected = 'an angle with its direction in words, such as 3.2 deg down to the rear';

function noDirection(text: string, angle: ReturnType<typeof readQuantity>): QuantityProblem {
  if (!angle.ok && !['unit-unknown', 'unit-missing'].includes(angle.problem.code)) return angle.problem;
  if (!angle.ok && angle.problem.code === 'unit-missing') return { ...angle.problem, expected };
  const found = angle.ok ? `${quoted(text.trim())} without a direction` : quoted(text.trim());
  const hint = `end with one of: ${directionWords.join(', ')}`;
  return { code: 'direction', found, expected, hint, at: angle.ok ? [0, text.length] : angle.problem.at };
}

function contradiction(text: string, negative: boolean, direction: string): QuantityProblem {
  const hint = negative ? 'leave the sign out: the words say the direction' : `“${direction}” stands for 0 deg only`;
  return { code: 'direction', found: quoted(text.trim()), expected, hint, at: [0, text.length] };
}
