import type { PDFDocumentProxy, PDFPageProxy, PDFWorker } from 'pdfjs-dist';

/** A paper opened for looking at. */
export interface PaperPages {
  readonly count: number;
  /** Draws a page (from 1) on a canvas of that width on the screen; the answer stops it. */
  draw(page: number, canvas: HTMLCanvasElement, widthPx: number): () => void;
  close(): void;
}

/** Opens the bytes of a PDF; the reader is fetched the first time a paper is looked at. */
export async function openPaper(pdf: Uint8Array): Promise<PaperPages> {
  const { pdfjs, worker } = await pdfReader();
  // A copy: the reader's worker takes the bytes away. The worker is ours: a paper that is closed leaves it to the next.
  const opened = await pdfjs.getDocument({ data: pdf.slice(), isEvalSupported: false, worker }).promise;
  return {
    count: opened.numPages,
    draw: (page, canvas, widthPx) => drawPage(opened, page, canvas, widthPx),
    close: () => void opened.destroy(),
  };
}

interface Reader {
  readonly pdfjs: typeof import('pdfjs-dist');
  readonly worker: PDFWorker;
}

let reader: Promise<Reader> | undefined;

function pdfReader(): Promise<Reader> {
  reader ??= Promise.all([import('pdfjs-dist'), import('pdfjs-dist/build/pdf.worker.min.mjs?worker')]).then(
    ([pdfjs, { default: ReaderWorker }]) => {
      // The types of pdfjs-dist know null alone for a port; its documentation has a worker.
      const port = new ReaderWorker() as unknown as null;
      return { pdfjs, worker: new pdfjs.PDFWorker({ port }) };
    },
  );
  return reader;
}

function drawPage(opened: PDFDocumentProxy, number: number, canvas: HTMLCanvasElement, widthPx: number): () => void {
  let stop = (): void => undefined;
  let stopped = false;
  const draw = (page: PDFPageProxy): void => {
    if (stopped) return;
    const whole = page.getViewport({ scale: 1 });
    const scale = widthPx / whole.width;
    const viewport = page.getViewport({ scale: scale * window.devicePixelRatio });
    canvas.width = Math.round(viewport.width);
    canvas.height = Math.round(viewport.height);
    canvas.style.width = `${widthPx}px`;
    const work = page.render({ canvas, viewport });
    stop = () => work.cancel();
    // Stopped because something newer is drawn: nothing to say of it.
    work.promise.catch(() => undefined);
  };
  opened.getPage(number).then(draw, (why: unknown) => {
    // A paper that was closed meanwhile has no pages to give.
    if (!stopped) throw why;
  });
  return () => {
    stopped = true;
    stop();
  };
}
