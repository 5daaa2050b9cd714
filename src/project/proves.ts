/** What an entry under `photos:` or `papers:` names as shown by it. */
export interface ProofName {
  /** Id of a hold point of the note, or of an item of the codes. */
  proof: string;
  /** Parts of it, `all` for every one; empty where the whole was named. */
  parts: readonly string[];
  /** From the entry. */
  path: readonly ['proves' | 'serves', number];
}

interface Entry {
  proves?: readonly string[] | undefined;
  serves?: readonly string[] | undefined;
}

/** `hoses-at-ends droop bump` names two parts of a proof. `serves` is the older spelling of the same. */
export function namesOf(entry: Entry): ProofName[] {
  return (['proves', 'serves'] as const).flatMap((key) =>
    (entry[key] ?? []).map((text, i) => ({ ...readName(text), path: [key, i] as const })),
  );
}

export function readName(text: string): Pick<ProofName, 'proof' | 'parts'> {
  const [proof = '', ...parts] = text.trim().split(/\s+/);
  return { proof, parts };
}

export const proves = (entry: Entry, proof: string): boolean => namesOf(entry).some((name) => name.proof === proof);
