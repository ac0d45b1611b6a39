import { mkdir, mkdtemp, realpath, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';

export interface ScratchFolder extends AsyncDisposable {
  readonly folder: string;
  /** Writes files by relative path, folders made as needed. */
  write(files: Readonly<Record<string, string | Uint8Array>>): Promise<void>;
}

/** A new empty folder that is removed at the end of its `await using`. */
export async function scratchFolder(): Promise<ScratchFolder> {
  const folder = await realpath(await mkdtemp(path.join(tmpdir(), 'hosewright-test-')));
  return {
    folder,
    async write(files) {
      for (const [name, content] of Object.entries(files)) {
        const place = path.join(folder, name);
        await mkdir(path.dirname(place), { recursive: true });
        await writeFile(place, content);
      }
    },
    [Symbol.asyncDispose]: () => rm(folder, { recursive: true, force: true }),
  };
}
