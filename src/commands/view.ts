import { resolve } from 'node:path';
import { UsageError } from '../platform/usage.js';
import { visible } from '../platform/visible.js';
import { showProblem } from '../project/show-problem.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io, untilEnded } from './terminal/io.js';
import { progressLine } from './terminal/progress.js';

export const form = formOf({
  command: 'view',
  names: [{ name: 'build', is: 'folder' }],
  about: `Shows the document of a build in a browser on this machine and follows the files as they are saved. What changed is
marked; what keeps the notes from being read is listed while the last document that could be made stays. Ctrl-C ends it.`,
  options: {
    as: { oneOf: ['submission', 'proposal'], usual: 'submission', says: 'which document' },
    port: { takes: 'number', usual: '0', says: 'where it answers; 0 is a free one' },
  },
  examples: ['gusset view builds/wagon', 'gusset view builds/wagon --as proposal --port 4173'],
});

/** After so long without a save, in milliseconds, what git tells is brought up to date. */
const rest = 1000;

export async function run(args: readonly string[], io: Io): Promise<Exit> {
  const { values, names } = parse(form, args);
  const [folder] = names as [string];
  const port = /^\d{1,5}$/.test(values.port) ? Number(values.port) : NaN;
  if (!(port <= 65535)) throw new UsageError(`found --port ${values.port}, expected a number up to 65535`);

  const ended = untilEnded(io);
  const [{ viewState }, { serve }, { follow }] = await Promise.all([
    import('../app/view-state.js'),
    import('../view/server.js'),
    import('../view/follow.js'),
  ]);
  const progress = progressLine(io);
  const state = viewState(folder, values.as, progress.say);
  await state.look([]).finally(progress.end);
  const { problems, document } = state.shown();
  if (problems.some((p) => p.code === 'build-missing')) {
    io.stderr(`${problems.map((p) => showProblem(p, io.columns)).join('\n\n')}\n`);
    return exits.usage;
  }
  let fail: (cause: unknown) => void = () => {};
  const failure = new Promise<never>((_, reject) => (fail = reject));
  let timer: NodeJS.Timeout | undefined;
  const server = await serve(state, port);
  const following = await follow(
    resolve(folder),
    async (saved) => {
      clearTimeout(timer);
      await state.look(saved);
      timer = setTimeout(() => void state.lookBack().catch(fail), rest);
    },
    fail,
  );
  const stop = state.onChange((before, now) => {
    if (now.saved.length > 0)
      io.stdout(`${new Date().toLocaleTimeString('en-GB')}  ${visible(now.saved.join(', '))}: ${told(before, now)}\n`);
  });
  io.stdout(
    `Preview of ${folder}: ${server.url}\n${document ? '' : 'The notes cannot be read yet; the page lists why. '}It follows the files as they are saved; Ctrl-C ends it.\n`,
  );
  try {
    await Promise.race([ended, failure]);
  } finally {
    clearTimeout(timer);
    stop();
    await Promise.all([following.close(), server.close()]);
  }
  io.stdout('The preview has ended.\n');
  return exits.clean;
}

type Shown = ReturnType<import('../app/view-state.js').ViewState['shown']>;

function told(before: Shown, now: Shown): string {
  if (now.problems.length > 0) return `${now.problems.length} problem(s); the last document stays`;
  const had = new Map(before.document?.parts.map((p) => [p.id, p.html]));
  const changed = now.document?.parts.filter((p) => had.get(p.id) !== p.html).length ?? 0;
  return changed === 0 ? 'nothing in the document differs' : `${changed} part(s) changed`;
}
