/** True for a full object id, SHA-1 or SHA-256. Only such ids and checked tag names ever reach git's arguments. */
export function isObjectId(text: string): boolean {
  return /^(?:[0-9a-f]{40}|[0-9a-f]{64})$/.test(text);
}

/** The id itself. Throws on anything else, a short id included. */
export function objectId(text: string): string {
  if (!isObjectId(text)) throw new Error(`Expected a full git object id, found "${text}".`);
  return text;
}
