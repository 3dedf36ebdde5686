/** How the launcher is bundled: ES modules, with the libraries that every start needs; the others stay outside. */
import { fileURLToPath } from 'node:url';
import { defineConfig, type Rolldown } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

const entry = here('./bundled-launch.ts');
const station = here('./launch-station.ts');

/** Adds a module and every other one that is loaded with it. */
const addLoadedWith = (id: string, modules: Rolldown.ChunkingContext, found: Set<string>): void => {
  if (found.has(id)) return;
  found.add(id);
  for (const imported of modules.getModuleInfo(id)?.importedIds ?? [])
    addLoadedWith(imported, modules, found);
};

/**
 * What the station is opened with. Left alone, it would be forty files, one for each way in which parts that are loaded later
 * share it, and they take longer to load than one.
 */
const isOpenedWith = (id: string, modules: Rolldown.ChunkingContext): boolean => {
  addLoadedWith(entry, modules, early);
  addLoadedWith(station, modules, opened);
  return opened.has(id) && !early.has(id);
};
const early = new Set<string>();
const opened = new Set<string>();

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
    ssr: entry,
    rolldownOptions: {
      output: {
        comments: false,
        format: 'es',
        entryFileNames: 'launch.js',
        chunkFileNames: 'launch-[name]-[hash].js',
        codeSplitting: {
          groups: [
            {
              name: (id, modules) => (isOpenedWith(id, modules) ? 'station' : null),
              includeDependenciesRecursively: false,
            },
          ],
        },
      },
    },
  },
});
