/** A value from the commit that set it until another follows. */
export interface FieldState {
  /** None once the value was taken out. */
  text: string | undefined;
  before: readonly FieldState[];
}

export interface FieldChange {
  from?: string;
  to?: string;
  sides?: (string | undefined)[];
}

/**
 * The state of a field after a commit, and what changed, given its states at the parents. A merge changes a field if
 * its result is at none of the parents, or if it settled between values that were both set since the sides parted:
 * taking over what only one side had set is no change.
 */
export function fieldChange(
  parents: readonly (FieldState | undefined)[],
  text: string | undefined,
): { state: FieldState; change?: FieldChange } {
  const before = parents.filter((state) => state !== undefined);
  const kept = before.filter((state) => alike(state.text, text));
  const gone = parents.find((state) => !alike(state?.text, text) && !kept.some((winner) => follows(winner, state)));
  const first = kept[0];
  const absent = kept.length === 0 && text === undefined;
  if (gone === undefined && (first !== undefined || absent)) {
    const same = kept.every((state) => state === first);
    return { state: first !== undefined && same ? first : { text, before: kept } };
  }
  return { state: { text, before }, change: changed(gone ?? before[0], text, parents) };
}

function changed(
  from: FieldState | undefined,
  to: string | undefined,
  parents: readonly (FieldState | undefined)[],
): FieldChange {
  return {
    ...(from?.text === undefined ? {} : { from: from.text }),
    ...(to === undefined ? {} : { to }),
    ...(parents.length > 1 ? { sides: parents.map((state) => state?.text) } : {}),
  };
}

/** True if `state` is an earlier state of `winner`; a field that was not there yet is earlier than any. */
function follows(winner: FieldState, state: FieldState | undefined): boolean {
  if (state === undefined) return true;
  const seen = new Set<FieldState>();
  const open = [winner];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (next === state) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    open.push(...next.before);
  }
  return false;
}

/** True if two texts differ in white space and line ends at most. */
export function alike(one: string | undefined, other: string | undefined): boolean {
  return one === other || (one !== undefined && other !== undefined && tight(one) === tight(other));
}

/** `2.5  mm` and `2.5mm` are one; `1 1/8` and `11/8` are not, nor are `no table` and `not able`. */
function tight(text: string): string {
  return text
    .normalize('NFC')
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(/(?<=\d) (?=\p{L})|(?<=\p{L}) (?=\d)/gu, '');
}
