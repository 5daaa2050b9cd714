import type { z } from 'zod';
import type { Common, Stage } from '../../project/common.js';
import type { FactName } from '../../project/facts.js';
import type { Measured } from '../../project/fields.js';
import type { Note } from '../../project/model.js';
import type { Derived } from './told.js';
import type { Work } from './work.js';

/** The measurements of one kind of note, what is checked on them and what must be recorded before it is covered. */
export interface Kind<S extends z.ZodRawShape = z.ZodRawShape> {
  id: string;
  title: string;
  /** What belongs into such a note, in a sentence or two. */
  covers: string;
  shape: S;
  holdPoints: readonly HoldPoint<Data<S>>[];
  /** Parts of evidence items, made from the note's own lists; a note that has some is asked for the item by itself. */
  proofParts?: (data: Data<S>) => Readonly<Record<string, readonly string[]>>;
  cautions: readonly CautionName[];
  /** Facts that a note of this kind states for the vehicle as modified. */
  facts?: (data: Data<S>) => Partial<Record<FactName, Measured | undefined>>;
  /** Answers to items of the code that follow from fields of the note, with the field that each follows from. */
  answers?: (data: Data<S>) => Readonly<Record<string, Derived | undefined>>;
  /** Which of the items that name the kind a note of it raises; left out: all of them. */
  raises?: (item: string, data: Data<S>) => boolean;
  /** Facts that its evaluation reckons: its notes are evaluated first, so that the others can read them. */
  reckons?: readonly FactName[];
  /** Words that applicability asks about, such as `induction`. */
  states?: (data: Data<S>) => Readonly<Record<string, string | undefined>>;
  evaluate: (note: NoteOf<S>, work: Work) => void;
}

export type Data<S extends z.ZodRawShape> = Common & z.output<z.ZodObject<S>>;
type NoteOf<S extends z.ZodRawShape> = Omit<Note, 'data'> & { data: Data<S> };

/** Evidence to be made before a stage covers it. */
export interface HoldPoint<D = never> {
  id: string;
  /** What must be photographed, measured or seen. */
  shows: string;
  /** `record`: make evidence; `witness`: the certifier is invited; `hold`: work stops until released. */
  level: 'record' | 'witness' | 'hold';
  /** The stage in which the evidence is made. */
  during: Stage;
  /** The stage that covers it. */
  before: Stage;
  /** What one picture or document each has to show: a fixed list, or made from the note's own lists. Left out: one is enough. */
  parts?: readonly string[] | ((data: D) => readonly string[]);
  /** The evidence item that asks for the same, with the parts of it, such as `engine.identity number`: asked once, here. */
  serves?: string;
}

export const cautions = {
  stands: 'Work under a vehicle only when it stands on rated stands on level ground; a jack is not a support.',
  welding:
    'Before welding: fuel system drained or removed, battery and control units disconnected, trim and wiring out of the heat, an extinguisher at hand and somebody who watches.',
  structure:
    'Structural work goes by a procedure that the certifier has agreed to, done by a welder who is qualified for it; where the local rules reserve the work for licensed trades, they come first.',
  brakes:
    'A brake system that has been opened is bled, checked for leaks under pressure and tested off the road before it is driven on the road.',
  fuel: 'Fuel vapour burns: no flame, spark or hot lamp near it; drain into sealed containers; check every joint for leaks under pressure before the engine is started.',
  steering:
    'Steering and suspension fasteners are tightened at ride height to the stated torque, locked, marked and checked again after the first drive.',
  spinning:
    'Keep clear of belts, fans and shafts that turn; a driveline is run on stands only with the wheels clear, the stands rated and nobody beside the shaft.',
  springs:
    'A compressed spring holds enough energy to kill: use a compressor made for it and never stand in line with it.',
  lifting: 'Engines and gearboxes are lifted with rated gear and never with anybody below.',
  pressure: 'Cooling systems are opened cold; hot coolant under pressure scalds.',
  electrical:
    'Disconnect the battery before work on the wiring; fuse every circuit at its source; airbag circuits are left to people who are licensed for them.',
  restraints:
    'Belts, anchorages, airbags and child restraint points are life-saving parts: they are moved or altered only under a design that the certifier has approved.',
  driving:
    'Tests on a car that is not yet certified are done off public roads or under the permit that the local authority asks for.',
  noise: 'Wear hearing protection for noise tests and keep bystanders away.',
} as const;
export type CautionName = keyof typeof cautions;

/** Declares a kind with its evaluation checked against its measurements. */
export function kind<const S extends z.ZodRawShape>(definition: Kind<S>): Kind {
  return definition as unknown as Kind;
}
