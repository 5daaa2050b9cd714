/**
 * Properties of a cross-section about its centroid in SI units. x runs across the width and y up the depth, so that
 * `Ix`, `Zx` and `Sx` are for bending in the plane of the depth.
 */
export interface SectionProperties {
  /** Area, m². */
  A: number;
  /** Second moments of area, m⁴. */
  Ix: number;
  Iy: number;
  /** Elastic moduli to the farther fibre, m³. */
  Zx: number;
  Zy: number;
  /** Plastic moduli, m³. */
  Sx: number;
  Sy: number;
  /** Torsion constant (St Venant), m⁴. */
  J: number;
  /** Mass for each metre of length, kg/m. */
  mass: number;
}

/** Density of steel that the section tables of EN 10219-2 and AS/NZS 1163 use, kg/m³. */
export const steelDensity = 7850;

export const densityInput = {
  symbol: '\\rho',
  unit: 'kg/m³',
  says: 'density of the material',
  usual: '7850 kg/m³',
} as const;

export const lossInput = {
  symbol: '\\Delta t',
  unit: 'mm',
  says: 'loss of wall by corrosion where only the original wall was measured; outside sizes stay as measured',
  usual: '0 mm',
} as const;

const shown = {
  A: { symbol: 'A', unit: 'mm²', says: 'area' },
  Ix: {
    symbol: 'I_x',
    unit: 'mm⁴',
    says: 'second moment of area about the x axis (bending in the plane of the depth)',
  },
  Iy: { symbol: 'I_y', unit: 'mm⁴', says: 'second moment of area about the y axis' },
  Zx: { symbol: 'Z_x', unit: 'mm³', says: 'elastic modulus about the x axis' },
  Zy: { symbol: 'Z_y', unit: 'mm³', says: 'elastic modulus about the y axis' },
  Sx: { symbol: 'S_x', unit: 'mm³', says: 'plastic modulus about the x axis' },
  Sy: { symbol: 'S_y', unit: 'mm³', says: 'plastic modulus about the y axis' },
  J: { symbol: 'J', unit: 'mm⁴', says: 'torsion constant' },
  mass: { symbol: 'm', unit: 'kg/m', says: 'mass for each metre' },
} as const;

type Name = keyof typeof shown;
type Shown<K extends Name> = (typeof shown)[K] & { readonly tex?: string };
type Others = { readonly [K in Exclude<Name, 'A'>]: Shown<K> };

export function areaResult(tex: string): Shown<'A'> {
  return { ...shown.A, tex };
}

/** The results after the area, with the formula lines that this section has; for sheets that put steps between. */
export function otherResults(tex: Partial<Record<Exclude<Name, 'A'>, string>>): Others {
  const { A: _, ...others } = shown;
  const lines: Partial<Record<string, string>> = { mass: '@A \\cdot @density', ...tex };
  return Object.fromEntries(
    Object.entries(others).map(([name, result]) => [
      name,
      lines[name] === undefined ? result : { ...result, tex: lines[name] },
    ]),
  ) as Others;
}

/** The results that every section sheet shows. */
export function propertyResults({
  A,
  ...others
}: Partial<Record<Name, string>> & { A: string }): { readonly A: Shown<'A'> } & Others {
  return { A: areaResult(A), ...otherResults(others) };
}
