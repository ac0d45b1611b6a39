import { randomBytes } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import path from 'node:path';

/**
 * Writes a file so that whoever reads it sees the old content or the new, whole: a temporary file beside it, flushed to
 * the disk, then renamed over it. When anything fails the old file stands and the temporary one is gone.
 */
export async function atomicWrite(file: string, content: string | Uint8Array): Promise<void> {
  const temporary = path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}.part`);
  try {
    const handle = await open(temporary, 'wx');
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, file);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}
