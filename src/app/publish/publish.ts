import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Manifest, manifestName, manifestText } from '../../history/manifest.js';
import { changed } from '../../platform/changed.js';
import { fontFaces, fontFiles, fontsDirectory } from '../../platform/fonts.js';
import { withLock } from '../../platform/lock.js';
import { realFolder, refuseToReplace } from '../../platform/own-output.js';
import { writeSelfContained } from '../../platform/self-contained.js';
import { writeFolderWhole } from '../../platform/whole.js';
import { launchBrowser } from '../../print/launch.js';
import { type Printed, printDocument } from '../../print/pdf.js';
import type { Problem } from '../../project/problem.js';
import { compose } from '../../render/compose.js';
import { htmlPage, notForScreens } from '../../render/page.js';
import { documentId, type Subject } from '../../render/subject.js';
import type { Loaded } from '../load.js';
import { type Input, readInputs } from '../repository/inputs.js';
import { type Standing, standingOf } from '../repository/standing.js';
import { findingsJson } from '../results/findings-json.js';
import { carriedFiles, digestOfFile, manifestFile, manifestOf, type Origin } from './attachments.js';
import { documentHistory } from './document-history.js';
import { activePapers } from './document-papers.js';
import { brokenPhotos, type PhotoSize, pictureFiles, pictures, prepareAll } from './document-photos.js';
import { identify } from './identity.js';
import { drawPapers, pageFiles, placedPages } from './paper-pages.js';
import { unprintableCharacters } from './printable.js';

export interface Publication {
  folder: string;
  files: string[];
  printed: Printed;
  manifest: Manifest;
}

export interface PublishOptions {
  as: 'submission' | 'proposal';
  /** Folder that receives `submission.html`, `.pdf` and the rest; replaced whole, if it is one that may be. */
  out: string;
  photos?: PhotoSize;
  progress?: (says: string) => void;
  /** Where the files stand in git, for a build that was taken out of a commit; else that is looked up. */
  standing?: Standing;
  /** The last step before the new folder takes the place of the old: if it fails, the old one stays. */
  seal?: (manifest: Manifest) => Promise<void>;
}

/** Writes the document of a build: HTML, PDF, findings, manifest. The old folder stays until the new one is whole. */
export async function publish(loaded: Loaded, options: PublishOptions): Promise<Publication | { problems: Problem[] }> {
  const { build, rules, evaluation, takenAt } = loaded;
  const say = options.progress ?? (() => {});
  const keep = [build.directory, ...(options.standing ? [options.standing.repo.root] : [])];
  const out = realFolder(options.out);
  refuseToReplace(out, keep, options.out);
  return withLock(`${out}.lock`, async () => {
    const { inputs, standing } = options.standing ? await taken(loaded, options.standing) : await standingOf(build);
    const hashes = new Map(inputs.map((i) => [i.path, i.sha256]));
    const identity = await identify(build, inputs, standing);
    const photos = await prepareAll(build, options.photos ?? 'print', say, undefined, hashes);
    const problems = [...brokenPhotos(build, photos), ...(await activePapers(build)), ...unprintableCharacters(build)];
    if (problems.length > 0) return { problems };
    for (const [path, photo] of photos) if (photo.ok && photo.sha256 !== hashes.get(path)) throw changed(path);
    say('reading the history');
    const past = standing ? await documentHistory(loaded, inputs, standing) : {};
    const browser = await launchBrowser();
    const base = { build, rules, evaluation, as: options.as, identity, ...past, browser: browser.version };
    const fill = async (folder: string): Promise<Publication> => {
      const names = { html: `${options.as}.html`, pdf: `${options.as}.pdf` };
      const findings = `${JSON.stringify(findingsJson(build, evaluation), null, 2)}\n`;
      await writeFile(join(folder, 'findings.json'), findings);

      const drawn = await drawPapers(build, hashes, browser, say);
      say('composing');
      const work = join(folder, 'work');
      await mkdir(work);
      const linked: Subject = {
        ...base,
        pictures: await pictures(photos, takenAt, work),
        paperPages: await placedPages(drawn, work),
      };
      const html = htmlPage(compose(linked, hashes), linked, fontFaces(fonts));
      await writeFile(join(work, 'print.html'), notForScreens(html));
      say('printing');
      const carried = await carriedFiles(findings, inputs);
      let manifest: Manifest | undefined;
      const alone = writeSelfContained(
        join(folder, names.html),
        html,
        new Map([
          ...fontFiles(fonts),
          ...pictureFiles(photos, linked.pictures),
          ...pageFiles(drawn, linked.paperPages),
        ]),
      );
      const printing = printDocument({
        html: join(work, 'print.html'),
        directory: work,
        out: join(folder, names.pdf),
        title: `${documentId(linked)}: ${build.data.title}`,
        author: build.data.workshop ?? '',
        subject: options.as === 'proposal' ? 'Proposal for modification' : 'Modification submission',
        keywords: build.data.codes ?? [],
        language: 'en-AU',
        documentId: documentId(linked),
        date: new Date(`${identity.date}T00:00:00Z`),
        browser,
        attachments: (pages, version) => {
          manifest = manifestOf(originOf(linked, options.photos ?? 'print', standing), inputs, carried, pages, version);
          return [...carried, manifestFile(manifest)];
        },
      });
      const [printed] = await all(printing, alone);
      await rm(work, { recursive: true });
      const outputs = await Promise.all(
        ['findings.json', names.html, names.pdf].map(async (name) => ({
          path: name,
          ...(await digestOfFile(join(folder, name))),
        })),
      );
      const whole = { ...manifest!, outputs };
      await writeFile(join(folder, manifestName), manifestText(whole));
      await options.seal?.(whole);
      return {
        folder: options.out,
        files: ['findings.json', manifestName, names.html, names.pdf],
        printed,
        manifest: whole,
      };
    };
    return writeFolderWhole(out, fill, keep).finally(browser.close);
  });
}

const fonts = pathToFileURL(fontsDirectory).href;

/** Both results, once both have ended: nothing of a failed one is left at work. */
async function all<A, B>(one: Promise<A>, other: Promise<B>): Promise<[A, B]> {
  await Promise.allSettled([one, other]);
  return Promise.all([one, other]);
}

/** The inputs of a build that was taken out of a commit. */
async function taken({ build }: Loaded, standing: Standing): Promise<{ inputs: Input[]; standing: Standing }> {
  const { inputs } = await readInputs(build, { ...standing, changed: new Set() });
  return { inputs, standing };
}

function originOf(subject: Subject, photos: PhotoSize, standing: Standing | undefined): Origin {
  const { build, identity, as } = subject;
  return {
    tool: identity.tool,
    document: documentId(subject),
    as,
    photos,
    build: build.name,
    ...(build.data.id === undefined ? {} : { id: build.data.id }),
    ...(standing ? { folder: standing.repo.prefix, commit: standing.commit } : {}),
    date: identity.date,
    dirty: [...identity.dirty],
    ...(standing?.issue
      ? { issue: standing.issue.letter, tag: standing.issue.tag, signed: standing.issue.signed }
      : {}),
  };
}
