/** What an entry under `photos:` or `papers:` names as shown by it. */
export interface ProofName {
  /** Id of a hold point of the note, or of an item of the codes. */
  proof: string;
  /** Parts of it, `all` for every one; empty where the whole was named. */
  parts: readonly string[];
  /** From the entry. */
  path: readonly ['proves', number];
}

interface Entry {
  proves?: readonly string[] | undefined;
}

/** `hoses-at-ends droop bump` names two parts of a proof. */
export function namesOf(entry: Entry): ProofName[] {
  return (entry.proves ?? []).map((text, i) => ({ ...readName(text), path: ['proves', i] as const }));
}

export function readName(text: string): Pick<ProofName, 'proof' | 'parts'> {
  const [proof = '', ...parts] = text.trim().split(/\s+/);
  return { proof, parts };
}

export const proves = (entry: Entry, proof: string): boolean => namesOf(entry).some((name) => name.proof === proof);
