import { manifestName } from '../../history/manifest.js';
import { hasOwnDigest } from '../../print/finish.js';
import { contentDigest, pageDigests } from '../../print/page-digests.js';
import { asked, type Checked, listed } from './checked.js';
import { sha256Of, type VerifiedDocument } from './document.js';

/** What a document shows of itself, without anything else. Who forges with care can make all of it fit. */
export function checkAlone(document: VerifiedDocument): Checked[] {
  return [
    asked('file', () => wholeFile(document)),
    asked('attachments', () => attachments(document)),
    asked('pages', () => pages(document)),
  ];
}

function wholeFile({ bytes }: VerifiedDocument): Checked {
  const fits = hasOwnDigest(bytes);
  return listed(
    'file',
    'the file bears the digest of its own bytes',
    'the file does not bear the digest of its own bytes: it was altered after it was printed, or saved by another program',
    fits ? [] : ['print or fetch it again'],
  );
}

function attachments({ manifest, attached, twice }: VerifiedDocument): Checked {
  const inputs = new Map(manifest.inputs.map((input) => [input.path, input.sha256]));
  const known = new Set([manifestName, ...manifest.attachments.map((a) => a.path)]);
  const against = [
    ...manifest.attachments.flatMap(({ path, sha256, of, rewritten }) => {
      const content = attached.get(path);
      if (!content) return [`${path} is not attached any more`];
      if (sha256Of(content) !== sha256) return [`${path} is not the file that was attached`];
      if (of === undefined) return [];
      // Of a PDF only the pages are carried: whether these are its pages shows when it is printed again.
      if (rewritten && /\.pdf$/i.test(of))
        return inputs.has(of) ? [] : [`${path} is listed as pages of ${of}, which is not listed`];
      return inputs.get(of) === sha256 ? [] : [`${path} is listed as ${of}, which is listed with another digest`];
    }),
    ...[...attached.keys()].filter((name) => !known.has(name)).map((name) => `${name} was attached later`),
    ...twice.map((name) => `${name} is attached more than once`),
  ];
  return listed(
    'attachments',
    `${manifest.attachments.length} attached files are those that were attached`,
    'attached files are not those that were attached',
    against,
  );
}

function pages({ pdf, manifest }: VerifiedDocument): Checked {
  const found = pageDigests(pdf);
  const against = [
    ...(found.length === manifest.pages.length
      ? []
      : [`it has ${found.length} pages, ${manifest.pages.length} were printed`]),
    ...manifest.pages.flatMap((digest, i) =>
      found[i] === undefined || found[i] === digest ? [] : [`page ${i + 1} shows something else than was printed`],
    ),
    ...(contentDigest(manifest.pages) === manifest.content ? [] : ['the list of pages in the manifest was altered']),
  ];
  return listed('pages', `${found.length} pages show what was printed`, 'pages do not show what was printed', against);
}
