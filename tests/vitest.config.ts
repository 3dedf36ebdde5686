import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { LongFirst } from './support/long-first.ts';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    globalSetup: ['tests/support/provision.ts'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    sequence: { sequencer: LongFirst },
  },
});
