/**
 * The form of a calculation sheet: a named, pure calculation in SI base units (angles in radians), with its formula,
 * symbols, units, published source, range of validity and worked example as data, so that the document can print all of
 * it beside the numbers.
 */

/** Where a formula, a figure or a limit comes from. */
export interface Source {
  document: string;
  edition?: string;
  /** Clause, table, equation or chapter, as the document counts them. */
  clause?: string;
  /** `memory`: recalled from the publication and not read again for this project. `derived`: follows from mechanics or geometry. */
  basis: 'published' | 'quoted' | 'practice' | 'memory' | 'derived';
}

/** A number with a unit. `unit` is how people write it (`mm`, `kN/mm`, `deg`, `1` for a ratio); the calculation sees SI. */
export interface QuantityInput {
  symbol: string;
  unit: string;
  says: string;
  /** Written as the builder would write it, with its uncertainty; taken, and printed as assumed, where nothing is given. */
  usual?: string;
  /** Names what the uncertainty of the usual value rests on; inputs of all sheets that name the same move together. */
  sharedSource?: string;
  /** May be left out; the calculation then sees `undefined`. */
  optional?: true;
}

/** One of several named cases (`single` or `double` shear). The keys are what is typed. */
export interface ChoiceInput {
  symbol: string;
  says: string;
  choices: Readonly<Record<string, string>>;
  usual?: string;
}

/** Rows of numbers (segments of a weld group, axle stations through travel). */
export interface SeriesInput {
  symbol: string;
  says: string;
  columns: Readonly<Record<string, { symbol: string; unit: string; says: string }>>;
}

export type Input = QuantityInput | ChoiceInput | SeriesInput;
export type Inputs = Readonly<Record<string, Input>>;

/** What one input looks like inside `calculate`. */
type Seen<I extends Input> = I extends { choices: infer C }
  ? keyof C & string
  : I extends { columns: infer C }
    ? readonly Readonly<Record<keyof C & string, number>>[]
    : I extends { optional: true }
      ? number | undefined
      : number;

type Given<I extends Inputs> = { readonly [K in keyof I]: Seen<I[K]> };

/** A step or a result. Steps are printed in the order in which they are declared. */
interface Result {
  symbol: string;
  unit: string;
  says: string;
  /**
   * The formula as TeX. `@name` stands for an input or an earlier step: it is printed once as its symbol and once as its
   * number with unit. Left out where there is no closed formula; `method` of the sheet then says how it is found.
   */
  tex?: string;
  /** `false` for steps on the way; the others are what the sheet is for. */
  step?: true;
}
export type Results = Readonly<Record<string, Result>>;

/** A worked example: `gives` names results with their printed value; the tolerance is half the last printed digit. */
export interface Example {
  given: Readonly<Record<string, string | readonly Readonly<Record<string, string>>[]>>;
  gives: Readonly<Record<string, string>>;
  source: Source;
}

/** The reason why there is no number: outside the range in which the formula holds. */
export class OutOfRange extends Error {}

export interface Sheet<I extends Inputs = Inputs, R extends Results = Results> {
  /** Stable, lower case with hyphens; what `gusset calc` is asked for and what a finding cites. */
  id: string;
  subject: Subject;
  title: string;
  /** What the sheet answers, in one or two sentences. */
  purpose: string;
  inputs: I;
  results: R;
  /** How it is found where a formula line does not say it all. */
  method?: string;
  assumptions?: readonly string[];
  sources: readonly Source[];
  /** Every one must hold; the first that does not is the reason given instead of a number. */
  validity: readonly { says: string; holds: (x: Given<I>) => boolean }[];
  /** @throws OutOfRange where the inputs admit no answer (no real root, parallel lines). */
  calculate: (x: Given<I>) => { readonly [K in keyof R]: number };
  /** What the result means for the work, for instance why a thicker plate is not better. */
  remark?: string;
  examples: readonly [Example, ...Example[]];
}

export const subjects = {
  sections: 'Cross-sections and members',
  welds: 'Welds',
  fasteners: 'Fasteners and threads',
  links: 'Links and rods',
  axle: 'Live axle on links',
  driveline: 'Driveline',
  suspension: 'Springs and bump steer',
  gearing: 'Gearing, tyres and speedometer',
  engine: 'Engine',
  brakes: 'Brakes',
  mass: 'Mass and centre of mass',
  beams: 'Beams and twist',
  noise: 'Noise',
  uncertainty: 'Measurement uncertainty',
} as const;
export type Subject = keyof typeof subjects;

/** Declares a sheet with its inputs' and results' names checked against the calculation. */
export function sheet<const I extends Inputs, const R extends Results>(definition: Sheet<I, R>): Sheet<I, R> {
  return definition;
}
