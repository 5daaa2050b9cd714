import type { Source } from './sheet.js';

/** One source of uncertainty for all of it: two members of steel differ in their modulus far less than it is known. */
const sharedSource = 'modulus of elasticity of steel';

/**
 * Modulus of elasticity of steel for every sheet that is not a standard's own. The expanded uncertainty takes in what is
 * in use for carbon and low-alloy steels, 200 GPa (AS 4100) to 210 GPa (EN 1993-1-1).
 */
export const elasticity = { unit: 'GPa', usual: '205 ± 5 GPa', sharedSource } as const;

/** Shear modulus that belongs to it: E/(2(1 + ν)) with ν = 0.3, so that both rise and fall together. */
export const shearModulus = { unit: 'GPa', usual: '78.85 ± 1.92 GPa', sharedSource } as const;

export const elasticitySource: Source = {
  document: 'Modulus of elasticity of steel: one value for all, with the range that standards and handbooks use',
  clause: '205 ± 5 GPa (k = 2); G = E/(2(1 + ν)) with ν = 0.3',
  basis: 'practice',
};
