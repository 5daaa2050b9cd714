import type { Spread } from '../../calc/propagate.js';

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
}

/**
 * What a comparison does with the uncertainty U (JCGM 106:2012, 8.2 and 8.3).
 *
 * - `guarded`: conforms where value ± U is inside, does not where it is outside, inconclusive in between.
 * - `as-read`: the value as read decides and U is printed: the text, or the maker's window, already allows for the
 *   prescribed instrument, or it is a recommendation.
 * - `exact`: there is no U: designations, counts, ratings, agreed load cases, and characteristic strengths whose scatter
 *   is in φ or γ.
 */
export const rules = ['guarded', 'as-read', 'exact'] as const;
export type Rule = (typeof rules)[number];

/** One end of a limit in SI units, with the sources of its uncertainty where it is calculated from measured facts. */
export interface Bound extends Spread {
  /** The bound itself is excluded (`under 750 mm`). */
  strict: boolean;
}

/** A bound that a text states as a number, in SI units. */
export function exactBound(si: number, strict = false): Bound {
  return { si, parts: new Map(), strict };
}

/** A bound that is calculated. */
export function boundOf({ si, parts, interval }: Spread, strict = false): Bound {
  return { si, parts, interval, strict };
}

/** A limit in SI units. */
export interface Limit extends Rests {
  min?: Bound | undefined;
  max?: Bound | undefined;
  /** Unit in which people write it. */
  unit: string;
  /** The expression that a bound is calculated from. */
  from?: string | undefined;
  /** Left out: `as-read` for a recommendation, `guarded` for all else. */
  rule?: Rule | undefined;
  /** Beyond a recommendation a justification is asked for; it does not fail the build. */
  recommended?: boolean | undefined;
}

export function ruleOf(limit: Pick<Limit, 'rule' | 'recommended'>): Rule {
  return limit.rule ?? (limit.recommended ? 'as-read' : 'guarded');
}

/** The weakest of several bases: a finding rests on the weakest of figure, applicability and definition. */
export function weakest(...of: readonly Basis[]): Basis {
  return of.reduce((a, b) => (bases.indexOf(b) > bases.indexOf(a) ? b : a), 'own-copy' as Basis);
}
