import { copyFileSync, mkdirSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';
import { defineConfig, type Plugin } from 'vite';

const root = import.meta.dirname;
const external = ['electron', ...builtinModules, /^node:/];

/**
 * What runs in Node. `--mode node`: the command line, its worker thread and Electron's main process, as modules that
 * share their chunks. `--mode preload`: one CommonJS file, since a sandboxed preload may require nothing but `electron`.
 */
export default defineConfig(({ mode }) => {
  const preload = mode === 'preload';
  const input: Record<string, string> = preload
    ? { 'preload/index': 'electron/preload/index.ts' }
    : {
        'cli/hosewright': 'electron/cli/hosewright.ts',
        'node/jobWorker': 'electron/node/jobWorker.ts',
        'main/index': 'electron/main/index.ts',
      };
  return {
    publicDir: false,
    plugins: preload ? [] : [paperFonts()],
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: '.build',
      emptyOutDir: false,
      target: 'node20.19',
      minify: false,
      rolldownOptions: {
        external,
        input,
        output: preload
          ? { format: 'cjs', entryFileNames: '[name].cjs' }
          : { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'node/chunks/[name].js' },
      },
    },
  };
});

/** Lays the papers' typefaces, with their licence, beside the bundle that reads them. */
function paperFonts(): Plugin {
  return {
    name: 'paper-fonts',
    writeBundle(options) {
      const from = path.join(root, 'node_modules/dejavu-fonts-ttf');
      const to = path.join(options.dir ?? path.join(root, '.build'), 'node/fonts');
      mkdirSync(to, { recursive: true });
      for (const name of ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf']) {
        copyFileSync(path.join(from, 'ttf', name), path.join(to, name));
      }
      copyFileSync(path.join(from, 'LICENSE'), path.join(to, 'LICENSE'));
    },
  };
}
