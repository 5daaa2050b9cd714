// These functions are sent to the browser and run inside the page; they can use nothing from outside themselves.

/** What the page holds that the printing must know. */
export interface PageContent {
  /** The ids that `<span class="page-of" data-target="…">` ask the page number of, one for each place in the order of the page. */
  asked: string[];
  /** Every character of the text, once. */
  characters: string;
}

interface Style {
  setProperty: (name: string, value: string) => void;
}

interface Font {
  family: string;
  weight: string;
  style: string;
  status: string;
  load: () => Promise<Font>;
}

interface InPage {
  document: {
    body: { textContent: string };
    fonts: Iterable<Font> & { ready: Promise<unknown>; add: (font: Font) => void };
    images: Iterable<{
      complete: boolean;
      naturalWidth: number;
      currentSrc: string;
      src: string;
      loading: string;
      decode: () => Promise<void>;
    }>;
    documentElement: object;
    querySelectorAll: (
      selector: string,
    ) => Iterable<{ textContent: string; dataset: Record<string, string>; style: Style }>;
  };
  FontFace: new (family: string, source: string) => Font;
  getComputedStyle: (element: object) => { getPropertyValue: (name: string) => string };
}

/** Loads every declared font, used or not; returns a complaint for each that could not be. */
export async function loadFonts(): Promise<string[]> {
  const { document } = globalThis as unknown as InPage;
  const faces = [...document.fonts];
  await Promise.allSettled(faces.map((face) => face.load()));
  await document.fonts.ready;
  return faces
    .filter((face) => face.status !== 'loaded')
    .map((face) => `font not loaded: ${face.family} ${face.weight} ${face.style}`);
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
  return { asked, characters: [...new Set(document.body.textContent)].join('') };
}

/**
 * Writes into each place of a page number its own place among them, in a font of its own, with leading zeros. A stand-in of
 * more digits than the document keeps room for (`--page-digits` of its root) is set closer, to fit there. Returns that room.
 */
export async function standIns(font: string): Promise<number> {
  const { document, FontFace, getComputedStyle } = globalThis as unknown as InPage;
  document.fonts.add(await new FontFace('Page numbers', `url("${font}")`).load());
  const digits = Number(getComputedStyle(document.documentElement).getPropertyValue('--page-digits')) || 1;
  const places = [...document.querySelectorAll('.page-of')];
  const cells = Math.max(digits, String(places.length).length);
  places.forEach((place, index) => {
    place.style.setProperty('font-family', 'Page numbers');
    place.style.setProperty('letter-spacing', `${(digits / cells - 1) * 0.572}em`);
    place.textContent = String(index).padStart(cells, '0');
  });
  return digits;
}

/** Writes the numbers themselves into their places. */
export function numbers(pageOf: Record<string, number>): void {
  const { document } = globalThis as unknown as InPage;
  for (const place of document.querySelectorAll('.page-of')) {
    place.style.setProperty('letter-spacing', 'normal');
    place.textContent = String(pageOf[place.dataset['target'] ?? '']);
  }
}
