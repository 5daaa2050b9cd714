// These functions are sent to the browser and run inside the page; they can use nothing from outside themselves.

/** What the page holds that the printing must know. */
export interface PageContent {
  /** The ids that `<span class="page-of" data-target="…">` ask the page number of. */
  asked: string[];
  /** Every character of the text, once. */
  characters: string;
}

interface InPage {
  document: {
    body: { textContent: string };
    fonts: Iterable<{ family: string; weight: string; style: string; status: string; load: () => Promise<unknown> }> & { ready: Promise<unknown> };
    images: Iterable<{ complete: boolean; naturalWidth: number; currentSrc: string; src: string; loading: string; decode: () => Promise<void> }>;
    documentElement: { scrollHeight: number; clientWidth: number; style: { getPropertyValue: (name: string) => string; setProperty: (name: string, value: string) => void } };
    querySelectorAll: (selector: string) => Iterable<{ textContent: string; dataset: Record<string, string> }>;
    adoptedStyleSheets: unknown[];
  };
  CSSStyleSheet: new () => { replaceSync: (text: string) => void };
}

/** Loads every declared font, used or not; returns a complaint for each that could not be. */
export async function loadFonts(): Promise<string[]> {
  const { document } = globalThis as unknown as InPage;
  const faces = [...document.fonts];
  await Promise.allSettled(faces.map((face) => face.load()));
  await document.fonts.ready;
  return faces.filter((face) => face.status !== 'loaded').map((face) => `font not loaded: ${face.family} ${face.weight} ${face.style}`);
}

/** Waits for every picture, the lazy ones too; returns a complaint for each that shows nothing. */
export async function brokenImages(): Promise<string[]> {
  const { document } = globalThis as unknown as InPage;
  const images = [...document.images];
  for (const image of images) image.loading = 'eager';
  await Promise.allSettled(images.filter((image) => !image.complete).map((image) => image.decode()));
  const broken = images.filter((image) => !image.complete || image.naturalWidth === 0);
  return broken.map((image) => `image without a picture: ${(image.currentSrc || image.src).slice(0, 160)}`);
}

/** What the page asks and says. */
export function readContent(): PageContent {
  const { document } = globalThis as unknown as InPage;
  const asked = [...document.querySelectorAll('.page-of')].map((place) => place.dataset['target'] ?? '');
  return { asked: [...new Set(asked)], characters: [...new Set(document.body.textContent)].join('') };
}

/**
 * Writes page numbers into their places. `--page-digits` on the root says how many digits the last page will have, reckoned
 * from the length of the page as it was loaded, so that a style sheet can keep that room for every number.
 */
export function writeNumbers(pageOf: Record<string, number>): void {
  const { document } = globalThis as unknown as InPage;
  const { style, scrollHeight, clientWidth } = document.documentElement;
  const paper = 654 * 971; // what stands on an A4 page of ours, in CSS pixels
  const known = style.getPropertyValue('--page-digits');
  const digits = known === '' ? String(Math.ceil((1.1 * scrollHeight * clientWidth) / paper)).length : Number(known);
  style.setProperty('--page-digits', String(digits));
  for (const place of document.querySelectorAll('.page-of')) place.textContent = String(pageOf[place.dataset['target'] ?? ''] ?? '0'.repeat(digits));
}

/** Hides all but the links, which a print needs to tell where they lead; what is hidden keeps its room. By a style sheet of our own, whatever the page's styles say. */
export function showOnlyLinks(only: boolean): void {
  const { document, CSSStyleSheet } = globalThis as unknown as InPage;
  const sheet = new CSSStyleSheet();
  sheet.replaceSync('*, *::before, *::after { visibility: hidden !important } a[href] { visibility: visible !important }');
  document.adoptedStyleSheets = only ? [sheet] : [];
}
