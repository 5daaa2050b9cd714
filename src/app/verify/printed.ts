import { type Manifest, readManifest } from '../../history/manifest.js';
import { pageDigests } from '../../print/page-digests.js';
import { asked, type Checked, differs, listed, matches, unchecked } from './checked.js';
import type { VerifiedDocument } from './document.js';
import { textOfPages } from './page-text.js';
import { textDifference } from './text-difference.js';

/**
 * A document against a new print of it: what its pages say, what is drawn on them, what is attached, and the rest of the file.
 * By another browser or picture library only what the pages say can be compared; the name of the browser, which the document
 * tells, does not count. What is not compared is unchecked.
 */
export function comparedPrints(document: VerifiedDocument, again: VerifiedDocument): Checked[] {
  const [then, now] = [document.manifest, again.manifest];
  if (document.sha256 === again.sha256)
    return [
      matches(
        'print',
        `printed again by the same browser (${then.browser}), it is the same to the last byte: pages, pictures, attachments and details`,
      ),
    ];
  const same = then.browser === now.browser && then.pictures === now.pictures;
  const others = `it was printed by ${then.browser} with ${then.pictures}, here it is ${now.browser} with ${now.pictures}`;
  const text = asked('print', () => {
    const list = wordsThatDiffer(document, again, same);
    return same
      ? listed('print', 'printed again, every page says the same', 'printed again, pages say something else', list)
      : listed(
          'print',
          `${others}: every page says the same`,
          `${others}: pages say something else. A line or page may break elsewhere in another browser; to be sure, verify with that version`,
          list,
        );
  });
  if (!same)
    return [
      text,
      unchecked('pictures', `${others}, and only the same versions make the same pictures and drawings`),
      unchecked(
        'details',
        'attachments, outline and structure can be compared only where the same versions printed it',
      ),
    ];
  const pictures = asked('pictures', () =>
    listed(
      'pictures',
      'pictures, drawings and links are the same on every page',
      'pages show other pictures, drawings or links than when it is printed again',
      shortened(pagesDrawnOtherwise(document, again).map((page) => `page ${page}`)),
    ),
  );
  const carried = listed(
    'carried',
    'what is attached is the same',
    'what is attached is not the same as when it is printed again',
    attachedOtherwise(document, again),
  );
  const rest = [text, pictures, carried].every((c) => c.state === 'matches')
    ? 'bytes differ that no page shows: its details, outline or structure'
    : 'and the file is not the same byte for byte';
  return [text, pictures, carried, differs('details', rest)];
}

/** What lies beside a document by the digests that its manifest lists, against what a new print wrote. */
export function comparedOutputs({ manifest: then }: VerifiedDocument, now: Manifest, beside?: string): Checked[] {
  const read = beside === undefined ? undefined : readManifest(beside);
  if (!read || 'problem' in read) return [];
  const others = (read.outputs ?? []).filter(({ path }) => !path.endsWith('.pdf'));
  if (then.browser !== now.browser || then.pictures !== now.pictures)
    return [unchecked('outputs', 'the files beside it can be compared only where the same versions printed them')];
  const digests = new Map(now.outputs?.map(({ path, sha256 }) => [path, sha256]));
  return [
    listed(
      'outputs',
      'the other files beside it are those that are printed again',
      'files beside it are not those that are printed again',
      others.filter(({ path, sha256 }) => digests.get(path) !== sha256).map(({ path }) => path),
    ),
  ];
}

const most = 12;
const shortened = (list: readonly string[]): string[] =>
  list.length > most ? [...list.slice(0, most), `and ${list.length - most} more pages`] : [...list];

function wordsThatDiffer(document: VerifiedDocument, again: VerifiedDocument, sameBrowser: boolean): string[] {
  const [before, now] = [document, again].map((d) =>
    textOfPages(d.pdf).map((text) => (sameBrowser ? text : text.replaceAll(d.manifest.browser, 'browser'))),
  ) as [string[], string[]];
  return shortened(
    Array.from({ length: Math.max(before.length, now.length) }, (_, i) => {
      const text = textDifference(before[i] ?? '', now[i] ?? '');
      return text ? [`page ${i + 1} says “${text.one}”, printed again it says “${text.other}”`] : [];
    }).flat(),
  );
}

function pagesDrawnOtherwise(document: VerifiedDocument, again: VerifiedDocument): number[] {
  const [drawn, drawnNow] = [pageDigests(document.pdf), pageDigests(again.pdf)];
  return Array.from({ length: Math.max(drawn.length, drawnNow.length) }, (_, i) =>
    drawn[i] === drawnNow[i] ? [] : [i + 1],
  ).flat();
}

const attachedOtherwise = (document: VerifiedDocument, again: VerifiedDocument): string[] =>
  [...new Set([...document.attached.keys(), ...again.attached.keys()])]
    .filter((name) => !sameBytes(document.attached.get(name), again.attached.get(name)))
    .map((name) => `the attached ${name} is another one`);

const sameBytes = (a: Uint8Array | undefined, b: Uint8Array | undefined): boolean =>
  a !== undefined && b !== undefined && Buffer.from(a).equals(Buffer.from(b));
