/** The command was used wrongly. Exit code 2; the message says what was found, what was expected and what to do. */
export class UsageError extends Error {}
