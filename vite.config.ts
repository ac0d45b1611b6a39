import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The window: one bundle for the Electron shell and for the browser. */
export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react()],
  resolve: { dedupe: ['react', 'react-dom', 'three'] },
  worker: { format: 'es' },
  build: {
    outDir: '../.build/renderer',
    emptyOutDir: true,
    target: 'chrome140',
    modulePreload: { polyfill: false },
    // Everything is read from this machine, so one large file costs no waiting.
    chunkSizeWarningLimit: 6000,
    assetsInlineLimit: 0,
  },
});
