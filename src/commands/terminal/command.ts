import type { Form } from './form.js';
import type { Exit, Io } from './io.js';

/** What a file of a command gives: arguments in, exit code out. */
interface Command {
  form: Form;
  run: (args: readonly string[], io: Io, commands: Commands) => Promise<Exit>;
}

/** Commands by their names, with what they are for; each is loaded only when it is asked for. */
export type Commands = Readonly<Record<string, { says: string; load: () => Promise<Command> }>>;
