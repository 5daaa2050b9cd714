import { wordsOf } from '../../platform/failure.js';

/** What one check of a document found. */
export interface Checked {
  name: string;
  /** `unchecked`: it could not be looked at; `none`: there is nothing of the kind to look at. */
  state: 'matches' | 'differs' | 'unchecked' | 'none';
  says: string;
  /** One by one, what differs. */
  list: string[];
}

export const matches = (name: string, says: string): Checked => ({ name, state: 'matches', says, list: [] });
export const differs = (name: string, says: string, list: string[] = []): Checked => ({
  name,
  state: 'differs',
  says,
  list,
});
export const unchecked = (name: string, says: string): Checked => ({ name, state: 'unchecked', says, list: [] });
export const none = (name: string, says: string): Checked => ({ name, state: 'none', says, list: [] });

/** It matches if nothing is listed against it. */
export const listed = (name: string, fine: string, against: string, list: readonly string[]): Checked =>
  list.length === 0 ? matches(name, fine) : differs(name, against, [...list]);

/** What an altered or damaged file can no longer be asked for counts as altered: it is never a fault of this program. */
export function asked(name: string, look: () => Checked): Checked {
  try {
    return look();
  } catch (cause) {
    return differs(name, 'this part of the file cannot be read: it was altered after it was printed, or is damaged', [
      wordsOf(cause),
    ]);
  }
}
