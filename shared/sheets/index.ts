import { PAPERS, type PaperName } from '../document/paper/paperNames.ts';
import { stockCuts } from './bench/stockCuts.ts';
import { buildSheetPdf } from './buildSheet/buildSheetPdf.ts';
import { cutListCsv } from './csv/cutListCsv.ts';
import { stockCutsCsv } from './csv/stockCutsCsv.ts';
import { utf8Bytes } from './csv/utf8Bytes.ts';
import type { SheetInput } from './input.ts';
import { tagSheetPdf } from './tags/tagSheetPdf.ts';

export { type StockCuts, stockCuts, stockWords } from './bench/stockCuts.ts';
export { buildSheetPdf } from './buildSheet/buildSheetPdf.ts';
export { CUT_LIST_COLUMNS, cutListCsv } from './csv/cutListCsv.ts';
export { STOCK_CUTS_COLUMNS, stockCutsCsv } from './csv/stockCutsCsv.ts';
export type { CutListInput, PaperSize, SheetEnd, SheetFonts, SheetInput, SheetRun } from './input.ts';

export { tagSheetPdf } from './tags/tagSheetPdf.ts';

export interface SheetOptions {
  /** these papers only; default all */
  readonly papers?: readonly PaperName[] | undefined;
  /** papers of these runs only, by id; default all */
  readonly runs?: readonly string[] | undefined;
  /** also a PDF for every hose on its own; default false */
  readonly perRun?: boolean | undefined;
}

/** A finished paper: where it goes, relative to the folder the user picks, and what is in it. */
export interface SheetFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/**
 * The papers of a project: `cut-list.csv`, `build-sheets.pdf`, `tags.pdf`, where there is hose in stock `stock-cuts.csv`, and by option
 * `build-sheet-<run>.pdf` for each hose.
 * Runs keep their number of the whole project even where only some are asked for.
 */
export async function makeSheets(input: SheetInput, options: SheetOptions = {}): Promise<SheetFile[]> {
  const { runs: only, papers = PAPERS } = options;
  const files: SheetFile[] = [];
  for (const path of PAPERS.filter((name) => papers.includes(name))) {
    const bytes = await drawPaper(path, input, only);
    if (bytes !== null) files.push({ path, bytes });
  }
  if (!options.perRun) return files;
  for (const { run } of input.runs) {
    if (only && !only.includes(run.id)) continue;
    files.push({ path: `build-sheet-${run.id}.pdf`, bytes: await buildSheetPdf(input, [run.id]) });
  }
  return files;
}

/** One paper; null = there is nothing to put on it. */
async function drawPaper(
  paper: PaperName,
  input: SheetInput,
  only: readonly string[] | undefined,
): Promise<Uint8Array | null> {
  switch (paper) {
    case 'cut-list.csv':
      return utf8Bytes(cutListCsv(input, only));
    case 'build-sheets.pdf':
      return buildSheetPdf(input, only);
    case 'tags.pdf':
      return tagSheetPdf(input, only);
    case 'stock-cuts.csv':
      return input.rolls === undefined || input.rolls.length === 0
        ? null
        : utf8Bytes(stockCutsCsv(stockCuts(input, input.rolls, only)));
  }
}
