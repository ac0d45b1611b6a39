import { builtinModules } from 'node:module';
import { defineConfig } from 'vite';

/** The measuring of laying as one file that Node runs by itself. */
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
      input: { measureLaying: 'tests/bench/measureLaying.ts' },
      output: { format: 'es', entryFileNames: '[name].js' },
    },
  },
});
