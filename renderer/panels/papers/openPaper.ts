import type { PDFDocumentProxy } from 'pdfjs-dist';

/** A paper opened for looking at. */
export interface PaperPages {
  readonly count: number;
  /** Draws a page (from 1) on a canvas of that width on the screen; the answer stops it. */
  draw(page: number, canvas: HTMLCanvasElement, widthPx: number): () => void;
  close(): void;
}

/** Opens the bytes of a PDF; the reader is fetched the first time a paper is looked at. */
export async function openPaper(pdf: Uint8Array): Promise<PaperPages> {
  const reader = await pdfReader();
  // A copy: the reader's worker takes the bytes away.
  const opened = await reader.getDocument({ data: pdf.slice(), isEvalSupported: false }).promise;
  return {
    count: opened.numPages,
    draw: (page, canvas, widthPx) => drawPage(opened, page, canvas, widthPx),
    close: () => void opened.destroy(),
  };
}

let reader: Promise<typeof import('pdfjs-dist')> | undefined;

function pdfReader(): Promise<typeof import('pdfjs-dist')> {
  reader ??= Promise.all([import('pdfjs-dist'), import('pdfjs-dist/build/pdf.worker.min.mjs?worker')]).then(
    ([pdfjs, { default: ReaderWorker }]) => {
      pdfjs.GlobalWorkerOptions.workerPort = new ReaderWorker();
      return pdfjs;
    },
  );
  return reader;
}

function drawPage(opened: PDFDocumentProxy, number: number, canvas: HTMLCanvasElement, widthPx: number): () => void {
  let stop = (): void => undefined;
  let stopped = false;
  void opened.getPage(number).then((page) => {
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
  });
  return () => {
    stopped = true;
    stop();
  };
}
