import { readFile } from 'node:fs/promises';

/** The program's version, from its own package.json. */
export async function readVersion(manifestFile: string): Promise<string> {
  const manifest = JSON.parse(await readFile(manifestFile, 'utf8')) as { version: string };
  return manifest.version;
}
