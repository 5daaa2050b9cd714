import type { Meta } from '../../src/project/field-tree.js';
import { typicalEntry } from '../../src/project/typical.js';
import { readUnit } from '../../src/units/unit.js';
import type { Block, Tree } from './bases.js';
import type { Random } from './random.js';

/** A value moved within its form, or now and then out of it. */

const alike = [
  ['mm', 'in', 'm', 'cm', 'thou'],
  ['kg', 't', 'lb', 'g'],
  ['N', 'kN', 'kgf', 'lbf'],
  ['N·m', 'ft·lbf', 'kN·m'],
  ['kPa', 'psi', 'bar', 'MPa'],
  ['km/h', 'm/s', 'mph'],
  ['cm3', 'l', 'm3'],
  ['kW', 'W', 'hp'],
  ['deg', 'rad'],
  ['%', '1'],
  ['s', 'ms', 'min'],
];
const wild = ['0', '-1', '1e9', '1e-9', '99999', '-0.001', '1e300', '2,5', 'unknown', '', '1e999', '−3', '½', '3/4'];

const digits = (r: Random, x: number): string => {
  const moved = x * r.one([0.5, 0.8, 0.9, 0.97, 0.99, 1, 1.001, 1.01, 1.03, 1.1, 1.3, 2]);
  const text = Number(moved.toPrecision(2 + r.below(4))).toString();
  return text.includes('e') ? moved.toFixed(3) : r.chance(0.1) ? `${text}${text.includes('.') ? '0' : '.0'}` : text;
};

const number = /^([+\-−]?\d+(?:\.\d+)?)(.*)$/su;

/** A quantity, of which the number, the unit, the ± or the count of readings differs. */
function quantity(r: Random, text: string): Tree {
  const [, first, rest] = number.exec(text) ?? [];
  if (first === undefined || rest === undefined) {
    const inside = /^\[([^\]]*)\](.*)$/su.exec(text);
    if (!inside) return r.one(['1 mm', '10 kg', '3', '5 %', ...wild]);
    const readings = inside[1]!.split(',').map((t) => t.trim());
    if (r.chance(0.5)) readings.splice(r.below(readings.length + 1), r.below(2), ...readings.slice(0, 1));
    const at = r.below(Math.max(1, readings.length));
    readings[at] = digits(r, Number.parseFloat(readings[at] ?? '1') || 1);
    return `[${readings.join(', ')}]${inside[2]}`;
  }
  const value = Number(first.replace('−', '-'));
  const unit = rest.replace(/^\s*(?:±|\+\/-)\s*[\d.]+\s*%?/u, '').trim();
  const bare = unit === '' ? '' : ` ${unit}`;
  switch (r.below(10)) {
    case 0:
      return `${digits(r, value)} ± ${digits(r, Math.abs(value) * r.one([0.001, 0.01, 0.05, 0.5, 2])) || '0.1'}${bare}`;
    case 1:
      return `${digits(r, value)}${bare} ± ${r.one(['1', '5', '0.5', '20', '150'])} %`;
    case 2:
      return `[${Array.from({ length: 2 + r.below(4) }, () => digits(r, value)).join(', ')}]${bare}`;
    case 3:
      return Array.from({ length: 1 + r.below(4) }, () => `${digits(r, value)}${bare}`);
    case 4: {
      const group = alike.find((g) => g.includes(unit));
      const to = group && r.one(group);
      const [a, b] = [readUnit(unit), to === undefined ? undefined : readUnit(to)];
      if (!a || !b) return text;
      const converted = (value * Number(a.factor)) / Number(b.factor);
      return `${Number(converted.toPrecision(6))} ${to}`.replace(/ 1$/, '');
    }
    case 5:
      return r.chance(0.3) ? `${r.one(wild)}${bare}` : `${digits(r, value)}${rest}`;
    default:
      return `${digits(r, value)}${rest}`;
  }
}

const directions = [
  'down to the rear',
  'down to the front',
  'nose up',
  'nose down',
  'level',
  'in',
  'out',
  'to the left',
];
function slope(r: Random, text: string): Tree {
  const moved = quantity(r, text);
  if (typeof moved !== 'string' || r.chance(0.7)) return moved;
  const spoken = directions.find((d) => moved.endsWith(d));
  return spoken ? moved.replace(spoken, r.one(directions)) : moved;
}

const day = (r: Random, text: string): string => {
  if (r.chance(0.03)) return r.one(['2025-02-30', '2025-3-1', '2099-01-01', '0000-00-00']);
  const at = Date.parse(/^\d{4}-\d{2}$/.test(text) ? `${text}-01` : text);
  const moved = new Date((Number.isNaN(at) ? Date.UTC(2025, 2, 10) : at) + (r.below(120) - 60) * 86_400_000);
  return moved.toISOString().slice(0, /^\d{4}-\d{2}$/.test(text) ? 7 : 10);
};

export const said = [
  'yes',
  'no',
  'not applicable',
  'no, the marking is missing',
  'not yet; see below',
  'x'.repeat(300),
  'a < b & c > "d"',
  '| a | b |',
  '**not** `done` [here](#x)',
  '<b onclick="x()">bold</b>',
  'Größe Ø 12 — ½',
  '\u202etxet',
  '𝒳 and 日本',
  '$x^2$ \\frac{1}{2}',
  'line one\nline two',
  '- a\n- b',
  '{{ page }}',
  '10 mm',
  '2025-03-10',
];

export interface Around {
  instruments: readonly string[];
  people: readonly string[];
  /** Texts that stand for the same field somewhere. */
  pool: ReadonlyMap<string, readonly string[]>;
}

/** What else could stand where `now` stands. */
export function instead(r: Random, now: Tree, key: string, meta: Meta, around: Around): Tree {
  if (typeof now !== 'string') return now;
  const others = around.pool.get(meta.says ?? key) ?? [];
  const form = meta.form ?? formOf(now, key);
  if (key === 'with') return r.one([...around.instruments, ...around.instruments, 'no-such']);
  if (key === 'by') return r.one([...around.people, 'R. Ansell', 'nobody']);
  if (meta.choices) return r.one(Object.keys(meta.choices));
  if (form === 'yes-no') return r.one(['yes', 'no']);
  if (form === 'day') return day(r, now);
  if (form === 'slope') return wrapped(r, slope(r, now), around);
  if (form === 'quantity') return wrapped(r, quantity(r, now), around);
  if (form === 'designation' || form === 'name' || form === 'file')
    return others.length > 0 && r.chance(0.7) ? r.one(others) : r.chance(0.5) ? quantityIn(r, now) : now;
  return others.length > 0 && r.chance(0.5) ? r.one(others) : key === 'id' || key === 'file' ? now : r.one(said);
}

/** A number somewhere in a text moved. */
const quantityIn = (r: Random, text: string): string => {
  const found = [...text.matchAll(/\d+(?:\.\d+)?/g)];
  if (found.length === 0) return text;
  const { 0: old, index } = r.one(found);
  return text.slice(0, index) + digits(r, Number(old)) + text.slice(index + old.length);
};

function formOf(text: string, key: string): Meta['form'] {
  if (key === 'value') return 'quantity';
  if (/^\d{4}-\d{2}(-\d{2})?$/.test(text)) return 'day';
  if (/^(?:yes|no)$/.test(text)) return 'yes-no';
  if (/^[+\-−\d[].*(?:deg|°)?.* (?:down|nose|level)/u.test(text)) return 'slope';
  if (number.test(text) && text.length < 30) return 'quantity';
  return key === 'id' || key === 'file' ? 'name' : 'text';
}

function wrapped(r: Random, value: Tree, around: Around): Tree {
  if (!r.chance(0.15) || around.instruments.length === 0) return value;
  const how: Block = { value, with: r.one(around.instruments) };
  if (r.chance(0.3)) how['on'] = day(r, '2025-03-10');
  if (r.chance(0.2)) how['by'] = r.one(around.people);
  return how;
}

/** An entry for a field that was left out. */
export const entry = (r: Random, key: string, meta: Meta, around: Around): Tree => {
  const typical = typicalEntry(key, meta);
  return key === 'load-case' ? 'link-pull' : r.chance(0.5) ? typical : instead(r, typical, key, meta, around);
};
