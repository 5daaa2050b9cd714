import type { Evaluation, Rules } from '../checks/engine/examine.js';
import type { Changes } from '../history/compare/compare.js';
import type { DocumentHistory } from '../history/issues.js';
import type { Build } from '../project/model.js';

/** All that the document is made from; nothing is read while composing. */
export interface Subject {
  build: Build;
  evaluation: Evaluation;
  rules: Rules;
  as: 'submission' | 'proposal';
  /** Prepared photos by their path relative to the build's folder. */
  pictures: ReadonlyMap<string, Picture>;
  /** First pages of the papers that are PDFs, as far as they are known. */
  paperPages: ReadonlyMap<string, PaperPage>;
  identity: Identity;
  /** What git tells of the past; absent outside a repository. */
  history?: DocumentHistory;
  /** What changed since the last issue, if there was one. */
  changes?: Changes;
  /** The browser that prints, as it names itself; absent where nothing is printed. */
  browser?: string | undefined;
}

export interface Picture {
  /** What `src` becomes: a file URL for printing or a data URL for the HTML edition. */
  url: string;
  width: number;
  height: number;
  /** Of the file as the builder keeps it. */
  sha256: string;
  takenAt?: string | undefined;
}

/** The picture of a paper's first page and how many pages it has, or why it could not be drawn. */
export type PaperPage = (Pick<Picture, 'url' | 'width' | 'height'> & { pages: number }) | { reason: string };

/** Which state of the files the document shows. */
export interface Identity {
  tool: string;
  /** Commit of the repository, absent outside git. */
  commit?: string | undefined;
  /** Day of that commit, or of the newest input where there is none. */
  date: string;
  /** Files that differ from the commit. */
  dirty: readonly string[];
  /** Issue letter, when the commit carries its tag. */
  letter?: string | undefined;
  tag?: string | undefined;
  /** What is known of the tag's signature, in words. */
  signature?: string | undefined;
  /** SHA-256 over all inputs. */
  inputs: string;
}

export const isDraft = (identity: Identity): boolean => identity.letter === undefined || identity.dirty.length > 0;

/** Printed on every page. */
export function documentId(subject: Pick<Subject, 'build' | 'identity'>): string {
  const { build, identity } = subject;
  const number = build.data.document ?? build.name;
  return identity.letter ? `${number} issue ${identity.letter}` : `${number} draft`;
}
