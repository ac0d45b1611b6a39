import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { PaperFonts } from '../../shared/jobs/contract.ts';

/** The papers' typefaces from the folder the build lays them in. */
export async function readPaperFonts(folder: string): Promise<PaperFonts> {
  const [regular, bold] = await Promise.all(
    ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((name) => readFile(path.join(folder, name))),
  );
  return { regular: Uint8Array.from(regular as Buffer), bold: Uint8Array.from(bold as Buffer) };
}
