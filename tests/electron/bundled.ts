import { randomBytes } from 'node:crypto';
import { copyFile } from 'node:fs/promises';
import { builtinModules } from 'node:module';
import path from 'node:path';
import { build } from 'vite';

const root = path.resolve(import.meta.dirname, '../..');

/**
 * Bundles TypeScript entries for plain Node, as the program's own build does, into `.build` of a new folder below
 * `.tmp`, and answers that folder. A thread or a child process of Node 20 cannot read TypeScript, and the program's own
 * build may be older than the sources.
 */
export async function bundled(entries: Readonly<Record<string, string>>): Promise<string> {
  const folder = path.join(root, '.tmp', `bundled-${randomBytes(4).toString('hex')}`);
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: path.join(folder, '.build'),
      target: 'node20.19',
      minify: false,
      rolldownOptions: {
        external: [...builtinModules, /^node:/],
        input: { ...entries },
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'node/chunks/[name].js' },
      },
    },
  });
  await copyFile(path.join(root, 'package.json'), path.join(folder, 'package.json'));
  return folder;
}
