import { randomUUID } from 'node:crypto';
import { basename } from 'node:path';
import { memory, textOf } from '../project/memory.js';
import type { Problem } from '../project/problem.js';
import type { Identity, Picture, Subject } from '../render/subject.js';
import { documentOf } from '../view/document.js';
import type { Shown } from '../view/preview.js';
import type { Source } from '../view/server.js';
import { amidSaves, ofTheSystem } from './amid-saves.js';
import type { Loaded } from './load.js';
import { documentHistory } from './publish/document-history.js';
import { loadWithPapers } from './publish/document-papers.js';
import { brokenPhotos, type Prepared, prepareAll } from './publish/document-photos.js';
import { identify } from './publish/identity.js';
import { type DrawnPapers, keptPapers, paperPages } from './publish/paper-pages.js';
import { standingOf } from './repository/standing.js';

/** What git and the bytes of the files tell; it takes longer than the rest and follows it. First pages of papers are those that a print has kept. */
type Past = Pick<Subject, 'identity' | 'history' | 'changes'> & {
  hashes: ReadonlyMap<string, string>;
  drawn: DrawnPapers;
};

export interface ViewState extends Source {
  /** Looks at the files again. */
  look: (saved: readonly string[]) => Promise<void>;
  /** Brings what git tells up to date. */
  lookBack: () => Promise<void>;
}

/** The document of a build and what keeps it from being made, brought up to date when told to. */
export function viewState(folder: string, as: Subject['as'], say: (says: string) => void): ViewState {
  const recall = memory();
  const listeners = new Set<(before: Shown, now: Shown) => void>();
  const photos = new Map<string, { file: string; mime: string }>();
  const run = randomUUID();
  let count = 0;
  let shown: Shown = { version: `${run}-0`, problems: [], saved: [] };
  let past: Past | undefined;
  let last: { loaded: Loaded; prepared: Prepared } | undefined;

  const show = (next: Omit<Shown, 'version'>) => {
    const before = shown;
    shown = { ...next, version: `${run}-${++count}` };
    for (const listener of listeners) listener(before, shown);
  };
  const refuse = (problems: readonly Problem[], saved: readonly string[]) =>
    show({ ...(shown.document ? { document: shown.document } : {}), problems, saved });
  const compose = ({ loaded, prepared }: NonNullable<typeof last>, saved: readonly string[]) => {
    const { hashes, drawn, ...told } = past!;
    for (const picture of [...prepared.values(), ...drawn.values()])
      if (picture.ok) photos.set(basename(picture.prepared), { file: picture.prepared, mime: picture.mime });
    const subject: Subject = {
      build: loaded.build,
      rules: loaded.rules,
      evaluation: loaded.evaluation,
      as,
      pictures: picturesOf(prepared, loaded),
      paperPages: paperPages(drawn, address),
      ...told,
    };
    show({ document: documentOf(subject, hashes, recall), problems: [], saved });
  };

  return {
    build: folder,
    shown: () => shown,
    photo: (name) => photos.get(name),
    onChange: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    look: async (saved) => {
      const read = await amidSaves(async () => {
        const loaded = await loadWithPapers(folder, recall);
        if (!('build' in loaded)) return loaded;
        const prepared = await prepareAll(loaded.build, 'print', say, recall);
        const problems = brokenPhotos(loaded.build, prepared);
        if (problems.length > 0) return { problems };
        past ??= await pastOf(loaded);
        return { loaded, prepared, problems };
      });
      if (!('loaded' in read)) return refuse(read.problems, saved);
      last = read;
      compose(last, saved);
    },
    lookBack: async () => {
      if (!last || shown.problems.length > 0) return;
      const current = last;
      // What cannot be read now is being saved, and what is saved is looked at again.
      const now = await pastOf(current.loaded).catch((cause: unknown) => {
        if (!ofTheSystem(cause)) throw cause;
      });
      if (!now || current !== last || textOf(now) === textOf(past)) return;
      past = now;
      compose(last, []);
    },
  };
}

async function pastOf(loaded: Loaded): Promise<Past> {
  const { inputs, standing } = await standingOf(loaded.build);
  const identity: Identity = await identify(loaded.build, inputs, standing);
  const told = standing ? await documentHistory(loaded, inputs, standing) : {};
  const hashes = new Map(inputs.map((i) => [i.path, i.sha256]));
  return { identity, ...told, hashes, drawn: await keptPapers(loaded.build, hashes) };
}

const address = (prepared: string): string => `/photos/${basename(prepared)}`;

function picturesOf(prepared: Prepared, { takenAt }: Loaded): Map<string, Picture> {
  return new Map(
    [...prepared].flatMap(([path, p]): [string, Picture][] =>
      p.ok
        ? [
            [
              path,
              {
                url: address(p.prepared),
                width: p.width,
                height: p.height,
                sha256: p.sha256,
                takenAt: takenAt.get(path),
              },
            ],
          ]
        : [],
    ),
  );
}
