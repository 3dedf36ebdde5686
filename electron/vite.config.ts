/** How the shell is bundled: its main process as an ES module, its preload as one CommonJS file, as a sandboxed page needs it. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/**
 * `--mode main` or `--mode preload`. What comes from `node_modules` stays outside, above all `electron` and `sqlite3`. What the
 * station loads when it is first needed becomes files beside `main.js`, in its folder, from which the assets are found.
 */
export default defineConfig(({ mode }) => ({
  root: here('.'),
  publicDir: false,
  build: {
    outDir: here('../dist/electron'),
    emptyOutDir: false,
    target: 'node22',
    minify: false,
    ssr: here(mode === 'preload' ? './preload.ts' : './main.ts'),
    rolldownOptions: {
      external: ['electron'],
      output: {
        format: mode === 'preload' ? 'cjs' : 'es',
        entryFileNames: mode === 'preload' ? 'preload.cjs' : 'main.js',
        chunkFileNames: 'main-[name].js',
        codeSplitting: mode !== 'preload',
      },
    },
  },
}));
