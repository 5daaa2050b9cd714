// This function is sent to the browser and runs inside the page; it can use nothing from outside itself.

interface InPage {
  pdfjsLib: {
    GlobalWorkerOptions: { workerSrc: string };
    getDocument: (options: object) => {
      promise: Promise<{ numPages: number; getPage: (n: number) => Promise<PdfPage> }>;
    };
  };
  document: {
    createElement: (name: 'canvas') => { width: number; height: number; toDataURL: (type: string) => string };
  };
}
interface PdfPage {
  getViewport: (options: { scale: number }) => { width: number; height: number };
  render: (options: object) => { promise: Promise<void> };
}

/** The first page of `/paper.pdf` as large as fits into so many pixels, as PNG in base 64; or the kind of error that kept it from being drawn. */
export async function drawFirstPageInPage(
  width: number,
  height: number,
): Promise<{ png: string; pages: number } | { error: string }> {
  const { pdfjsLib, document } = globalThis as unknown as InPage;
  pdfjsLib.GlobalWorkerOptions.workerSrc = '/legacy/build/pdf.worker.min.mjs';
  try {
    const pdf = await pdfjsLib.getDocument({
      url: '/paper.pdf',
      disableRange: true,
      disableStream: true,
      useWorkerFetch: false,
      verbosity: 0,
      isEvalSupported: false,
      enableXfa: false,
      useSystemFonts: false,
      isOffscreenCanvasSupported: false,
      isImageDecoderSupported: false,
      maxImageSize: 1e8,
      standardFontDataUrl: '/standard_fonts/',
      cMapUrl: '/cmaps/',
      wasmUrl: '/wasm/',
      iccUrl: '/iccs/',
    }).promise;
    if (pdf.numPages === 0) return { error: 'NoPages' };
    const page = await pdf.getPage(1);
    const whole = page.getViewport({ scale: 1 });
    const viewport = page.getViewport({ scale: Math.min(width / whole.width, height / whole.height) });
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.floor(viewport.width));
    canvas.height = Math.max(1, Math.floor(viewport.height));
    // Of annotations only their looks are drawn, as on paper: fields that are filled in, stamps.
    await page.render({ canvas, viewport, intent: 'print', background: '#fff' }).promise;
    return { png: canvas.toDataURL('image/png').replace(/^[^,]*,/, ''), pages: pdf.numPages };
  } catch (error) {
    return { error: String((error as Error | undefined)?.name) };
  }
}
