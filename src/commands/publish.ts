import { createHash } from 'node:crypto';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Build } from '../build/model.js';
import type { Problem } from '../build/problem.js';
import type { Evaluation, Rules } from '../checks/examine.js';
import { findingsJson } from '../checks/findings-json.js';
import type { TakenAt } from '../checks/order.js';
import { fontFaces, fontsDirectory } from '../print/fonts.js';
import type { Attachment } from '../print/finish.js';
import { launchBrowser } from '../print/launch.js';
import { withLock } from '../print/lock.js';
import { printDocument, type Printed } from '../print/pdf.js';
import { writeFolderWhole } from '../print/whole.js';
import { compose } from '../render/compose.js';
import { htmlPage } from '../render/page.js';
import { documentId, type Subject } from '../render/subject.js';
import { brokenPhotos, pictures, prepareAll, type PhotoSize } from './document-photos.js';
import { hashInputs, identify, type InputHash } from './identity.js';
import { recallPages, rememberPages } from './page-memory.js';
import { unprintableCharacters } from './printable.js';

export interface Publication {
  folder: string;
  files: string[];
  printed: Printed;
  identity: Subject['identity'];
}

export interface PublishOptions {
  as: 'submission' | 'proposal';
  /** Folder that receives `submission.html`, `.pdf` and the rest; replaced whole. */
  out: string;
  photos?: PhotoSize;
  progress?: (says: string) => void;
}

/** Writes the document of a build: HTML, PDF, findings, manifest. The old folder stays until the new one is whole. */
export async function publish(build: Build, rules: Rules, evaluation: Evaluation, takenAt: TakenAt, options: PublishOptions): Promise<Publication | { problems: Problem[] }> {
  const say = options.progress ?? (() => {});
  return withLock(`${options.out}.lock`, async () => {
    const inputs = await hashInputs(build);
    const identity = await identify(build, inputs);
    const photos = await prepareAll(build, options.photos ?? 'print', say);
    const problems = [...brokenPhotos(build, photos), ...unprintableCharacters(build)];
    if (problems.length > 0) return { problems };
    const hashes = new Map(inputs.map((i) => [i.path, i.sha256]));
    const browser = await launchBrowser();
    const base = { build, rules, evaluation, as: options.as, identity, browser: browser.version };
    return writeFolderWhole(options.out, async (folder) => {
      const names = { html: `${options.as}.html`, pdf: `${options.as}.pdf` };
      const findings = `${JSON.stringify(findingsJson(build, evaluation), null, 2)}\n`;
      await writeFile(join(folder, 'findings.json'), findings);

      say('composing');
      const inline: Subject = { ...base, pictures: await pictures(photos, takenAt, 'inline') };
      await writeFile(join(folder, names.html), htmlPage(compose(inline, hashes), inline, fontFaces('inline')));

      const work = join(folder, 'work');
      await mkdir(work);
      const linked: Subject = { ...base, pictures: await pictures(photos, takenAt, { folder: work }) };
      await writeFile(join(work, 'print.html'), htmlPage(compose(linked, hashes), linked, fontFaces(pathToFileURL(fontsDirectory).href)));
      say('printing');
      const printed = await printDocument({
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
        remembered: await recallPages(options.out),
        attachments: [...data(findings, build, inputs), ...(await sources(build))],
      });
      await rememberPages(options.out, printed.pageOf);
      await rm(work, { recursive: true });
      const outputs = await Promise.all(['findings.json', names.html, names.pdf].map(async (name) => ({ path: name, ...digest(await readFile(join(folder, name))) })));
      await writeFile(join(folder, 'manifest.json'), manifestText(identity, inputs, outputs, printed));
      return { folder: options.out, files: ['findings.json', 'manifest.json', names.html, names.pdf], printed, identity };
    }).finally(browser.close);
  });
}

const digest = (bytes: Uint8Array) => ({ bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') });

/** What the document says, as data, and the digest of every file that it was made from. */
function data(findings: string, build: Build, inputs: readonly InputHash[]): Attachment[] {
  const list = `${JSON.stringify({ form: 'gusset-inputs/1', build: build.name, inputs }, null, 2)}\n`;
  return [
    { name: 'findings.json', mime: 'application/json', relationship: 'Data', description: 'All findings of this document', bytes: Buffer.from(findings) },
    { name: 'inputs.json', mime: 'application/json', relationship: 'Data', description: 'SHA-256 of every file that this document was made from', bytes: Buffer.from(list) },
  ];
}

/** Kinds of file that are attached. Pictures are not: they may tell where they were taken. */
const attached: Readonly<Record<string, { mime: string; relationship: 'Source' | 'Supplement'; description: string }>> = {
  '.md': { mime: 'text/markdown', relationship: 'Source', description: 'Note as the builder wrote it' },
  '.yaml': { mime: 'application/yaml', relationship: 'Source', description: 'Limits as the builder wrote them' },
  '.csv': { mime: 'text/csv', relationship: 'Source', description: 'Readings as the builder wrote them' },
  '.pdf': { mime: 'application/pdf', relationship: 'Supplement', description: 'Paper that a note names' },
  '.txt': { mime: 'text/plain', relationship: 'Supplement', description: 'Paper that a note names' },
};

/** The builder's files, under their paths written without separators; two that would then be named alike stay apart by a digest. */
async function sources(build: Build): Promise<Attachment[]> {
  const plain = (path: string) => path.replace(/[^\w.-]+/g, '-').replace(/^[-.]+/, '');
  const kept = build.inputs.filter((i) => extname(i.path).toLowerCase() in attached);
  return Promise.all(
    kept.map(async (input) => {
      const alone = kept.every((other) => other === input || plain(other.path) !== plain(input.path));
      const name = alone ? plain(input.path) : `${createHash('sha256').update(input.path).digest('hex').slice(0, 8)}-${plain(input.path)}`;
      return { name, ...attached[extname(input.path).toLowerCase()]!, bytes: await readFile(input.absolute) };
    }),
  );
}

function manifestText(identity: Subject['identity'], inputs: readonly InputHash[], outputs: readonly InputHash[], printed: Printed): string {
  return `${JSON.stringify({ form: 'gusset-manifest/1', tool: identity.tool, commit: identity.commit, dirty: identity.dirty, issue: identity.letter, browser: printed.browser, pages: printed.pages, inputs, outputs }, null, 2)}\n`;
}
