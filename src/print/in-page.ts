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
    documentElement: { scrollHeight: number; clientWidth: number };
    getElementById: (id: string) => { getBoundingClientRect: () => { top: number } } | null;
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

/** Writes page numbers into their places; where one is not known, a guess from how far down the page its target lies, for its digits. */
export function writeNumbers(pageOf: Record<string, number>): Record<string, string> {
  const { document } = globalThis as unknown as InPage;
  const { scrollHeight, clientWidth } = document.documentElement;
  const pages = (scrollHeight * clientWidth) / (654 * 971); // what an A4 page of ours holds, in CSS pixels
  const guess = (id: string) => Math.ceil((pages * (document.getElementById(id)?.getBoundingClientRect().top ?? 0)) / scrollHeight) || 1;
  const places = [...document.querySelectorAll('.page-of')].map((place) => ({ place, id: place.dataset['target'] ?? '' }));
  const texts = places.map(({ id }) => String(pageOf[id] ?? guess(id)));
  places.forEach(({ place }, i) => (place.textContent = texts[i]!));
  return Object.fromEntries(places.map(({ id }, i) => [id, texts[i]!]));
}

/** Hides or shows pictures by a style sheet of our own, whatever the page's styles say. */
export function setImagesShown(shown: boolean): void {
  const { document, CSSStyleSheet } = globalThis as unknown as InPage;
  const sheet = new CSSStyleSheet();
  sheet.replaceSync('img, svg, canvas { visibility: hidden !important }');
  document.adoptedStyleSheets = shown ? [] : [sheet];
}
