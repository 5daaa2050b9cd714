import type { Problem } from '../project/problem.js';

/** One section of the document, by the id that it carries. */
export interface Part {
  id: string;
  html: string;
}

/** The document as it is shown. */
export interface Document {
  title: string;
  draft: boolean;
  parts: readonly Part[];
}

/** What the preview shows: the last document that could be made, and what keeps the notes from being read now. */
export interface Shown {
  /** Differs for every state that was ever shown. */
  version: string;
  document?: Document;
  problems: readonly Problem[];
  /** The files whose saving led to this. */
  saved: readonly string[];
}

/** What a page is told to come from what it shows to what is shown now. */
export interface Update {
  version: string;
  title: string;
  draft: boolean;
  /** Ids of all parts, in their order. */
  order: readonly string[];
  /** HTML of the parts that the page does not have as they are. */
  parts: Readonly<Record<string, string>>;
  problems: readonly Problem[];
  saved: readonly string[];
}

/** The update from an earlier state, or from nothing. */
export function updateFrom(before: Shown | undefined, now: Shown): Update {
  const had = new Map(before?.document?.parts.map((p) => [p.id, p.html]));
  const { title = '', draft = true, parts = [] } = now.document ?? {};
  const changed = parts.filter((p) => had.get(p.id) !== p.html);
  return {
    version: now.version,
    title,
    draft,
    order: parts.map((p) => p.id),
    parts: Object.fromEntries(changed.map((p) => [p.id, p.html])),
    problems: now.problems,
    saved: now.saved,
  };
}
