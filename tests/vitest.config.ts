import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { LongFirst } from './support/long-first.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Their test files keep nothing from one another but modules, so one process runs many of them and loads those once. */
const together = ['domain', 'intake', 'planning', 'renderer', 'reports', 'station', 'typesetting'].map(
  (folder) => `tests/${folder}/**/*.test.{ts,tsx}`,
);

const limits = { testTimeout: 30_000, hookTimeout: 60_000 };

export default defineConfig({
  root,
  test: {
    globalSetup: ['tests/support/provision.ts'],
    maxWorkers: 2,
    sequence: { sequencer: LongFirst },
    projects: [
      {
        root,
        test: { name: 'apart', include: ['tests/**/*.test.{ts,tsx}'], exclude: together, ...limits },
      },
      { root, test: { name: 'together', include: together, isolate: false, ...limits } },
    ],
  },
});
