import { readUnit } from './compose.js';
import { type Dimension, sameDimension } from './dimension.js';

/** What a dimension is called, and the units in which people write it, the commonest first. */
interface Kind {
  name: string;
  units: readonly string[];
}

const kinds: readonly Kind[] = [
  { name: 'a ratio or a number', units: ['1', '%'] },
  { name: 'a length', units: ['mm', 'in', 'thou', 'µm', 'm', 'cm', 'ft', 'km'] },
  { name: 'an area', units: ['mm²', 'cm²', 'm²', 'in²'] },
  { name: 'a volume', units: ['cm³', 'L', 'mm³', 'mL', 'in³', 'm³'] },
  { name: 'a second moment of area', units: ['mm⁴', 'cm⁴', 'in⁴'] },
  { name: 'a mass', units: ['kg', 'g', 'lb', 't', 'oz'] },
  { name: 'a force', units: ['N', 'kN', 'lbf', 'kgf'] },
  { name: 'a torque or an energy', units: ['N·m', 'ft·lbf', 'lbf·in', 'kN·m', 'N·mm', 'kgf·m', 'J', 'kJ'] },
  { name: 'a pressure or a stress', units: ['MPa', 'kPa', 'psi', 'bar', 'GPa', 'ksi', 'N/mm²', 'Pa'] },
  { name: 'a power', units: ['kW', 'W', 'hp', 'PS'] },
  { name: 'an angle', units: ['deg', 'rad', 'arcmin', 'rev'] },
  { name: 'a rotational speed', units: ['rpm', 'rad/s', 'deg/s'] },
  { name: 'a rotational acceleration', units: ['rad/s²', 'deg/s²'] },
  { name: 'a speed', units: ['km/h', 'm/s', 'mph', 'mm/s', 'ft/s'] },
  { name: 'an acceleration', units: ['m/s²', 'g_n'] },
  { name: 'a time', units: ['s', 'min', 'h', 'ms'] },
  { name: 'a frequency', units: ['Hz', '1/min', '1/s'] },
  { name: 'a temperature', units: ['degC', 'K'] },
  { name: 'a sound level', units: ['dB(A)', 'dB'] },
  { name: 'an unbalance', units: ['g·mm', 'oz·in', 'kg·mm'] },
  { name: 'a stiffness or a load per length', units: ['N/mm', 'kN/mm', 'kN/m', 'lbf/in', 'N/m'] },
  { name: 'a torsional stiffness', units: ['N·m/deg', 'ft·lbf/deg', 'N·m/rad', 'kN·m/deg'] },
  { name: 'a density', units: ['kg/m³', 'g/cm³', 'lb/in³'] },
  { name: 'a mass per length', units: ['kg/m', 'lb/ft'] },
  { name: 'a moment of inertia', units: ['kg·m²', 'kg·cm²'] },
  { name: 'a capacity per mass', units: ['cm³/kg', 'L/t', 'in³/lb'] },
  { name: 'a power per mass', units: ['kW/kg', 'kW/t', 'W/kg', 'hp/lb'] },
  { name: 'a flow', units: ['L/min', 'L/s', 'L/h', 'cm³/s'] },
  { name: 'an angle per length', units: ['deg/mm', 'deg/m', 'rad/m'] },
  { name: 'a length per angle', units: ['mm/deg', 'in/deg', 'mm/rev'] },
  { name: 'a current', units: ['A', 'mA'] },
  { name: 'a voltage', units: ['V', 'mV'] },
  { name: 'a resistance', units: ['ohm', 'mohm', 'kohm'] },
  { name: 'a charge', units: ['Ah'] },
];

interface Everyday {
  text: string;
  kind: Kind;
  dimension: Dimension;
}

let made: readonly Everyday[] | undefined;

/** Every unit in a kind's list, with its dimension; made when it is first asked for, which is for a message. */
export function everydayUnits(): readonly Everyday[] {
  made ??= kinds.flatMap((kind) => kind.units.map((text) => ({ text, kind, dimension: readUnit(text)!.dimension })));
  return made;
}

/** `a length`, or undefined for a dimension that has no name here. */
export function nameOf(dimension: Dimension): string | undefined {
  return everydayUnits().find((u) => sameDimension(u.dimension, dimension))?.kind.name;
}
