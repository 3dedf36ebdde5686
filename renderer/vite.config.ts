/** How the screens are built: one folder of files that load nothing from the network and carry no inline script. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: fileURLToPath(new URL('../dist/renderer', import.meta.url)),
    emptyOutDir: true,
    target: 'chrome120',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1500,
    // A schema that no screen reads is not made. Zod's functions only make something (zod.dev, "Tree-shaking"; from memory).
    rolldownOptions: { treeshake: { manualPureFunctions: ['z'] } },
  },
});
