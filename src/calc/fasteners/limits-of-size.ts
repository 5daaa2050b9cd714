/** The limits of size that decide how threads strip, m. */
export interface ThreadLimits {
  d: number;
  P: number;
  /** Smallest major and pitch diameter of the bolt thread. */
  boltMajorMin: number;
  boltPitchMin: number;
  /** Largest minor and pitch diameter of the tapped thread. */
  nutMinorMax: number;
  nutPitchMax: number;
}
