import type { Place } from '../../calc/value.js';
import type { Answer } from '../../project/common.js';
import { type NamedPath, placeOfField } from '../../project/find-field.js';
import { type Build, type Note, placeIn } from '../../project/model.js';
import type { Item } from '../codes/item.js';
import type { Finding } from './finding.js';
import { decide } from './verdict.js';

/** An answer that follows from what a note states, with the field that it follows from. */
export interface Derived extends Answer {
  from?: NamedPath | undefined;
}

/** What the facts of the build say to an item of the codes. Facts decide; an answer only explains. */
export interface Told {
  item: string;
  /** Name of the note whose evaluation found it; absent for `build.md`. */
  note?: string | undefined;
  /** The answer that follows; absent for what only speaks against some answers. */
  answer?: string | undefined;
  because: string;
  /** Where the fact stands. */
  place: Place;
  /** Whether these words of an answer go against it; left out: `yes`, `no` and `not applicable` exclude each other. */
  excludes?: ((said: string) => boolean) | undefined;
  /** Words that must stand beside what is made of it. */
  marks?: readonly string[] | undefined;
  todo?: string | undefined;
}

export const isNotApplicable = (word: string | undefined): boolean => word === 'not applicable' || word === 'n/a';

/** A no, whatever is said after it, such as `no, the marking is missing`; `no leaks` is none. */
export const saysNo = (word: string): boolean =>
  /^\s*(?:(?:no|none|nothing)\s*(?:[,;:.!–—-]|$)|(?:not|missing)\b)/iu.test(word);

/** `yes`, `no` or `not applicable`; absent for any other words. */
function decisive(word: string | undefined): string | undefined {
  if (isNotApplicable(word)) return 'not applicable';
  return word === 'yes' || word === 'no' ? word : undefined;
}

/** Whether an answer goes against a fact. */
export function goesAgainst(said: string, fact: Pick<Told, 'answer' | 'excludes'>): boolean {
  if (fact.excludes) return fact.excludes(said);
  const follows = decisive(fact.answer);
  return follows !== undefined && follows !== (decisive(said) ?? said);
}

/** What `build.md` says to an item: the modification codes that it names. */
export function toldByBuild(item: Item, build: Build): Told[] {
  if (item.kind !== 'answer' || item.states !== 'modification-code') return [];
  const stated = (build.data.codes ?? []).filter((code) => item.codes?.includes(code));
  if (stated.length === 0) return [];
  return [
    {
      item: item.id,
      answer: stated.join(', '),
      because: `\`codes:\` of build.md names ${stated.join(', ')}`,
      place: placeIn({ front: build.front, file: build.file }, ['codes']),
      excludes: (said) => {
        const named = wordsIn(said, item.codes ?? []);
        return named.length > 0 && !named.some((code) => stated.includes(code));
      },
    },
  ];
}

/** What a value that lies surely beyond a figure says to the answer of another item. */
export function toldByLimit(finding: Finding, item: Item): Told[] {
  if ((item.kind !== 'limit' && item.kind !== 'test') || !item['speaks-against']) return [];
  const { item: other, words, unless, because } = item['speaks-against'];
  if (!liesBeyond(finding)) return [];
  return [
    {
      item: other,
      note: finding.note,
      because: `${finding.title}: ${finding.says}; ${because}`,
      place: finding.place,
      excludes: (said) => wordsIn(said, words).length > 0 && wordsIn(said, unless).length === 0,
      marks: finding.marks,
      todo: 'read the figure in your copy, then agree the code with the certifier and state it in build.md and in the note',
    },
  ];
}

/** Whether a value lies beyond its figure with all its uncertainty, confirmed or not. */
function liesBeyond({ measured, limit }: Finding): boolean {
  return (
    measured !== undefined &&
    limit !== undefined &&
    decide(measured, { ...limit, basis: 'own-copy' }).result === 'against'
  );
}

const wordsIn = (said: string, words: readonly string[]): string[] =>
  words.filter((word) => new RegExp(`\\b${word}\\b`).test(said));

/** Where the field stands from which an answer follows. */
export const placeOfDerived = (note: Note, { from }: Derived): Place | undefined => from && placeOfField(note, from);
