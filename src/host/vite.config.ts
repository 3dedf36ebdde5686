/** How the launcher is bundled: one ES module, with the libraries that every start needs; the others stay outside. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The same two steps down as the shell's bundle, so that the assets are found from it. */
export default defineConfig({
  root: here('.'),
  publicDir: false,
  ssr: {
    noExternal: ['zod', 'kysely', /^temporal-/, 'canonicalize', 'env-paths', 'is-safe-filename', 'i18next'],
  },
  build: {
    outDir: here('../../dist/host'),
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    ssr: here('./bundled-launch.ts'),
    rolldownOptions: {
      output: {
        comments: false,
        format: 'es',
        entryFileNames: 'launch.js',
        chunkFileNames: 'launch-[name]-[hash].js',
      },
    },
  },
});
