/** What a comparison rests on, from the strongest to the weakest. */
export const bases = ['own-copy', 'published', 'maker', 'quoted', 'practice', 'memory'] as const;
export type Basis = (typeof bases)[number];

export const basisSays: Readonly<Record<Basis, string>> = {
  'own-copy': 'typed in from their own copy by the builder or the certifier',
  published: 'read in the published text by this project',
  maker: 'specification of the maker of the vehicle or part',
  quoted: 'read in another publication that quotes the text',
  practice: 'common practice of the trade, no source',
  memory: 'recalled, not confirmed',
};

/** Whether the text in which a figure was read still stands. */
export const statuses = ['in-force', 'superseded', 'not-known'] as const;
type Status = (typeof statuses)[number];

/** Where a requirement stands, as data. */
export interface Rests {
  document: string;
  edition?: string | undefined;
  clause?: string | undefined;
  jurisdiction?: string | undefined;
  basis: Basis;
  status?: Status | undefined;
  /** The publication in which a quoted text was read. */
  readIn?: string | undefined;
  /** Who typed an own-copy figure, and when. */
  readBy?: string | undefined;
  on?: string | undefined;
  /** The certifier who adopted a figure of common practice in writing; the document is the letter. */
  agreedWith?: string | undefined;
}

/** A limit in SI units, `min` and `max` inclusive unless `open`. Several of them may bound one value. */
export interface Limit extends Rests {
  min?: number | undefined;
  max?: number | undefined;
  /** The limit itself is excluded (`under 750 mm`). */
  open?: boolean | undefined;
  /** Unit in which people write it. */
  unit: string;
  /** Expanded uncertainty of a bound that is reckoned from measured facts, SI. */
  expanded?: number | undefined;
  /** The expression that such a bound is reckoned from. */
  from?: string | undefined;
  /** Beyond a recommendation a justification is asked for; it does not fail the build. */
  recommended?: boolean | undefined;
}

/** The weakest of several bases: a finding rests on the weakest of figure, applicability and definition. */
export function weakest(...of: readonly Basis[]): Basis {
  return of.reduce((a, b) => (bases.indexOf(b) > bases.indexOf(a) ? b : a), 'own-copy' as Basis);
}
