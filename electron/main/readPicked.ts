import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { bad, good, type Result } from '../../shared/base/result.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';
import { reasonOf } from '../node/readProjectFiles.ts';

/** Files that the user picked in a dialog, by their plain names; all that cannot be read are reported. */
export async function readPicked(places: readonly string[]): Promise<Result<readonly NamedFile[]>> {
  const read = await Promise.all(places.map(readOne));
  const problems = read.flatMap((one) => (one.ok ? [] : one.problems));
  return problems.length > 0 ? bad(problems) : good(read.flatMap((one) => (one.ok ? [one.value] : [])));
}

async function readOne(place: string): Promise<Result<NamedFile>> {
  try {
    return good({ path: path.basename(place), bytes: Uint8Array.from(await readFile(place)) });
  } catch (error) {
    return bad([{ path: place, message: `cannot be read (${reasonOf(error)})` }]);
  }
}
