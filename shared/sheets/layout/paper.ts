import { PDFDocument, PrintScaling } from '@cantoo/pdf-lib';
import { invariant } from '../../base/invariant.ts';
import type { PaperSize, SheetFonts } from '../input.ts';
import { Face } from './face.ts';
import { fontKit } from './fontKit.ts';
import { Page } from './page.ts';
import { MM_PER_POINT } from './style.ts';

/** mm; ISO 216 and ANSI/ASME Y14.1. */
export const PAPER_MM: Record<PaperSize, readonly [number, number]> = { A4: [210, 297], Letter: [215.9, 279.4] };

export interface PaperOptions {
  readonly size: PaperSize;
  readonly fonts: SheetFonts;
  readonly title: string;
  /** `YYYY-MM-DD`; stands as the file's date of making, so that the same input gives the same bytes */
  readonly printedOn: string;
}

/** A set of pages on their way to a PDF file. */
export class Paper {
  readonly pages: Page[] = [];
  readonly regular: Face;
  readonly bold: Face;
  readonly #file: PDFDocument;
  readonly #size: PaperSize;

  constructor(file: PDFDocument, regular: Face, bold: Face, size: PaperSize) {
    this.#file = file;
    this.regular = regular;
    this.bold = bold;
    this.#size = size;
  }

  addPage(): Page {
    const [width, height] = PAPER_MM[this.#size];
    const page = new Page(this.#file.addPage([width / MM_PER_POINT, height / MM_PER_POINT]), this.regular, this.bold);
    this.pages.push(page);
    return page;
  }

  /** The finished file. */
  async bytes(): Promise<Uint8Array> {
    return this.#file.save();
  }
}

/** An empty set of pages; asks every viewer to print without scaling, since strips on it are laid against real hose. */
export async function openPaper(options: PaperOptions): Promise<Paper> {
  invariant(
    /^\d{4}-\d{2}-\d{2}$/.test(options.printedOn),
    `openPaper: printedOn ${options.printedOn} is not YYYY-MM-DD`,
  );
  const file = await PDFDocument.create();
  file.registerFontkit(fontKit);
  const embed = async (bytes: Uint8Array): Promise<Face> =>
    new Face(await file.embedFont(bytes, { subset: true, features: { liga: false } }));
  const paper = new Paper(file, await embed(options.fonts.regular), await embed(options.fonts.bold), options.size);
  const day = new Date(`${options.printedOn}T00:00:00Z`);
  file.setCreationDate(day);
  file.setModificationDate(day);
  file.setTitle(options.title);
  file.setProducer('Hosewright');
  file.setCreator('Hosewright');
  file.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  return paper;
}
