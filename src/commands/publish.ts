import { createHash } from 'node:crypto';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Build } from '../build/model.js';
import type { Problem } from '../build/problem.js';
import type { Evaluation, Rules } from '../checks/examine.js';
import { findingsJson } from '../checks/findings-json.js';
import type { TakenAt } from '../checks/order.js';
import { fontFaces, fontsDirectory } from '../print/fonts.js';
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
    const base = { build, rules, evaluation, as: options.as, identity };
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
        remembered: await recallPages(options.out),
        attachments: attachments(findings, build, inputs, await readNotes(build)),
      });
      await rememberPages(options.out, printed.pageOf);
      await rm(work, { recursive: true });
      const outputs = await Promise.all(['findings.json', names.html, names.pdf].map(async (name) => ({ path: name, ...digest(await readFile(join(folder, name))) })));
      await writeFile(join(folder, 'manifest.json'), manifestText(identity, inputs, outputs, printed));
      return { folder: options.out, files: ['findings.json', 'manifest.json', names.html, names.pdf], printed, identity };
    });
  });
}

const digest = (bytes: Uint8Array) => ({ bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') });

async function readNotes(build: Build): Promise<{ name: string; bytes: Uint8Array }[]> {
  const texts = build.inputs.filter((i) => i.path.endsWith('.md') || i.path.endsWith('.yaml'));
  return Promise.all(texts.map(async (i) => ({ name: i.path.replace(/[^\w.-]+/g, '-').replace(/^[-.]+/, ''), bytes: await readFile(i.absolute) })));
}

function attachments(findings: string, build: Build, inputs: readonly InputHash[], notes: readonly { name: string; bytes: Uint8Array }[]) {
  const data = { form: 'gusset-inputs/1', build: build.name, inputs };
  return [
    { name: 'findings.json', mime: 'application/json', relationship: 'Data' as const, description: 'All findings of this document', bytes: Buffer.from(findings) },
    { name: 'inputs.json', mime: 'application/json', relationship: 'Data' as const, description: 'SHA-256 of every file that this document was made from', bytes: Buffer.from(`${JSON.stringify(data, null, 2)}\n`) },
    ...notes.map((n) => ({ name: n.name, mime: n.name.endsWith('.md') ? 'text/markdown' : 'application/yaml', relationship: 'Source' as const, description: 'Note as the builder wrote it', bytes: n.bytes })),
  ];
}

function manifestText(identity: Subject['identity'], inputs: readonly InputHash[], outputs: readonly InputHash[], printed: Printed): string {
  return `${JSON.stringify({ form: 'gusset-manifest/1', tool: identity.tool, commit: identity.commit, dirty: identity.dirty, issue: identity.letter, browser: printed.browser, pages: printed.pages, inputs, outputs }, null, 2)}\n`;
}
