/** Sound energy, relative to its reference, of a level in dB. */
export function energy(level: number): number {
  return 10 ** (level / 10);
}

/** Level in dB of a sound energy. */
export function level(energyOf: number): number {
  return 10 * Math.log10(energyOf);
}
