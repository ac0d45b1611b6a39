import { builtinModules } from 'node:module';
import { defineConfig } from 'vite';

/** The measuring of laying as a file that Node runs by itself, with the worker threads that it measures. */
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: true,
    outDir: '.build/bench',
    target: 'node20.19',
    minify: false,
    rolldownOptions: {
      external: [...builtinModules, /^node:/],
      input: { measureLaying: 'tests/bench/measureLaying.ts', jobWorker: 'electron/node/jobWorker.ts' },
      output: { format: 'es', entryFileNames: '[name].js' },
    },
  },
});
