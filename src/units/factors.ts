import { Decimal, PI } from './decimal.js';
import type { Dimension } from './dimension.js';

/**
 * The units that can be written, by their defining factors to SI (BIPM, The International System of Units, 9th ed.;
 * NIST SP 811, app. B, for the exact inch, pound, pound-force and horsepower). Everything else is composed from them.
 * The tests hold every row against an independent library of units.
 */
export interface Atom {
  /** The spelling that is printed. */
  text: string;
  factor: Decimal;
  /** Added after the factor: the zero of a temperature scale. */
  offset?: Decimal;
  dimension: Dimension;
}

const atoms = new Map<string, Atom>();
const d = (x: string) => new Decimal(x);

function define(spellings: string, factor: Decimal, dimension: Dimension, offset?: Decimal): void {
  const [text, ...others] = spellings.split(' ');
  const atom: Atom = { text: text!, factor, dimension, ...(offset && { offset }) };
  for (const spelling of [text!, ...others]) atoms.set(spelling, atom);
}

const powers: Readonly<Record<string, number>> = { G: 9, M: 6, k: 3, h: 2, '': 0, d: -1, c: -2, m: -3, µ: -6 };

/** Only those prefixes that people use with this unit: `mPa` and `nm` are far likelier to be slips. */
function withPrefixes(
  prefixes: string,
  symbol: string,
  factor: Decimal,
  dimension: Dimension,
  other: readonly string[] = [],
): void {
  for (const prefix of ['', ...prefixes]) {
    const spellings = [symbol, ...other].flatMap((s) => (prefix === 'µ' ? [`µ${s}`, `μ${s}`, `u${s}`] : [prefix + s]));
    define(spellings.join(' '), factor.times(`1e${powers[prefix]}`), dimension);
  }
}

const length = { length: 1 };
const mass = { mass: 1 };
const force = { mass: 1, length: 1, time: -2 };
const pressure = { mass: 1, length: -1, time: -2 };
const energy = { mass: 1, length: 2, time: -2 };
const power = { mass: 1, length: 2, time: -3 };
const volume = { length: 3 };
const angle = { angle: 1 };

const inch = d('0.0254');
const foot = inch.times(12);
const pound = d('0.45359237');
const ounce = pound.div(16);
const standardGravity = d('9.80665');
const poundForce = pound.times(standardGravity);
const psi = poundForce.div(inch.pow(2));
const mile = foot.times(5280);
const turn = PI.times(2);

define('1', d('1'), {});
define('%', d('0.01'), {});

withPrefixes('kdcmµ', 'm', d('1'), length);
define('in " ″ ”', inch, length);
define('thou', inch.div(1000), length);
define('ft', foot, length);
define('mi', mile, length);

withPrefixes('km', 'g', d('0.001'), mass);
define('t', d('1000'), mass);
define('lb', pound, mass);
define('oz', ounce, mass);

withPrefixes('mµ', 's', d('1'), { time: 1 });
define('min', d('60'), { time: 1 });
define('h', d('3600'), { time: 1 });

withPrefixes('Mk', 'N', d('1'), force);
define('kgf', standardGravity, force);
define('lbf', poundForce, force);
define('ozf', ounce.times(standardGravity), force);
define('kip', poundForce.times(1000), force);

withPrefixes('GMkh', 'Pa', d('1'), pressure);
define('bar', d('1e5'), pressure);
define('mbar', d('100'), pressure);
define('psi', psi, pressure);
define('ksi', psi.times(1000), pressure);

withPrefixes('Mk', 'J', d('1'), energy);
withPrefixes('Mk', 'W', d('1'), power);
define('hp', foot.times(poundForce).times(550), power);
define('PS', standardGravity.times(75), power);

withPrefixes('dcmµ', 'L', d('0.001'), volume, ['l']);
atoms.set('cc', { text: 'cm³', factor: d('1e-6'), dimension: volume });

define('mph', mile.div(3600), { length: 1, time: -1 });
define('g_n', standardGravity, { length: 1, time: -2 });

withPrefixes('m', 'rad', d('1'), angle);
define('deg °', PI.div(180), angle);
define('arcmin', PI.div(10800), angle);
define('rev', turn, angle);
define('rpm', turn.div(60), { angle: 1, time: -1 });
withPrefixes('k', 'Hz', d('1'), { time: -1 });

define('K', d('1'), { temperature: 1 });
define('degC °C', d('1'), { temperature: 1 }, d('273.15'));

withPrefixes('m', 'A', d('1'), { current: 1 });
define('Ah', d('3600'), { current: 1, time: 1 });
withPrefixes('m', 'V', d('1'), { ...power, current: -1 });
withPrefixes('kmM', 'ohm', d('1'), { ...power, current: -2 }, ['Ω', 'Ω']);

define('dB', d('1'), { level: 1 });
define('dB(A) dBA', d('1'), { level: 1 });

/** All spellings, with what they stand for. */
export const units: ReadonlyMap<string, Atom> = atoms;
