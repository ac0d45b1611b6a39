import react from '@vitejs/plugin-react';
import { defineConfig, type Rolldown } from 'vite';

type LogHook = NonNullable<Rolldown.InputOptions['onLog']>;

/** The mesh reader can read files in Node; in the window it never does, so that the browser has none is no news. */
const rolldownOptions: { onLog: LogHook } = {
  onLog: (level, log, tell) => {
    if (!log.message.includes('externalized for browser compatibility')) tell(level, log);
  },
};

/** The window: one bundle for the Electron shell and for the browser. */
export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react()],
  resolve: { dedupe: ['react', 'react-dom', 'three'] },
  worker: { format: 'es', rolldownOptions },
  build: {
    outDir: '../.build/renderer',
    emptyOutDir: true,
    target: 'chrome140',
    modulePreload: { polyfill: false },
    // Everything is read from this machine, so one large file costs no waiting.
    chunkSizeWarningLimit: 6000,
    assetsInlineLimit: 0,
    rolldownOptions,
  },
});
