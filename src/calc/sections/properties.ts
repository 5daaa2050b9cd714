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

export const densityInput = { symbol: '\\rho', unit: 'kg/m³', says: 'density of the material', usual: '7850 kg/m³' } as const;

export const lossInput = {
  symbol: '\\Delta t',
  unit: 'mm',
  says: 'loss of wall by corrosion where only the original wall was measured; outside sizes stay as measured',
  usual: '0 mm',
} as const;

const shown = {
  A: { symbol: 'A', unit: 'mm²', says: 'area' },
  Ix: { symbol: 'I_x', unit: 'mm⁴', says: 'second moment of area about the x axis (bending in the plane of the depth)' },
  Iy: { symbol: 'I_y', unit: 'mm⁴', says: 'second moment of area about the y axis' },
  Zx: { symbol: 'Z_x', unit: 'mm³', says: 'elastic modulus about the x axis' },
  Zy: { symbol: 'Z_y', unit: 'mm³', says: 'elastic modulus about the y axis' },
  Sx: { symbol: 'S_x', unit: 'mm³', says: 'plastic modulus about the x axis' },
  Sy: { symbol: 'S_y', unit: 'mm³', says: 'plastic modulus about the y axis' },
  J: { symbol: 'J', unit: 'mm⁴', says: 'torsion constant' },
  mass: { symbol: 'm', unit: 'kg/m', says: 'mass for each metre' },
} as const;

type Shown<K extends keyof typeof shown> = (typeof shown)[K] & { readonly tex?: string };

/** The results that every section sheet shows, with the formula lines that this section has. */
export function propertyResults(tex: Partial<Record<keyof typeof shown, string>>): { readonly [K in keyof typeof shown]: Shown<K> } {
  const lines: typeof tex = { mass: '@A \\cdot @density', ...tex };
  return Object.fromEntries(
    Object.entries(shown).map(([name, result]) => {
      const line = lines[name as keyof typeof shown];
      return [name, line === undefined ? result : { ...result, tex: line }];
    }),
  ) as { readonly [K in keyof typeof shown]: Shown<K> };
}
