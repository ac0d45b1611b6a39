import { readFile } from 'node:fs/promises';
import { bad, good, type Result } from '../../shared/base/result.ts';
import { LayReport } from '../../shared/document/lay/schema.ts';
import { zodProblems } from '../../shared/document/problems/zodProblems.ts';
import { reasonOf } from './readProjectFiles.ts';

/** Reads a lay report that was written earlier; everything wrong with it is reported. */
export async function readReport(file: string): Promise<Result<LayReport>> {
  let raw: unknown;
  try {
    raw = JSON.parse(await readFile(file, 'utf8'));
  } catch (error) {
    const why = error instanceof SyntaxError ? `not JSON: ${error.message}` : `cannot be read (${reasonOf(error)})`;
    return bad([{ path: file, message: why }]);
  }
  const parsed = LayReport.safeParse(raw);
  return parsed.success ? good(parsed.data) : bad(zodProblems(parsed.error.issues, LayReport, raw));
}
