/** The record of the station in Setup, after it was verified: its checkpoint, kept elsewhere and held against it. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Screen } from './visit.ts';
import { press } from './visit.ts';

/** A signed note in form, by nobody. */
const strangersCheckpoint = `example.com/elsewhere\n7\n${Buffer.alloc(32, 7).toString('base64')}\n\n— example.com/elsewhere ${Buffer.alloc(68, 7).toString('base64')}\n`;

export const screensOfLedger: readonly Screen[] = [
  {
    name: 'setup, the record verified with the checkpoint of another station',
    show: async (visit) => {
      await visit.page.locator('input[type=file][accept*=checkpoint]').setInputFiles({
        name: 'other.checkpoint',
        mimeType: 'text/plain',
        buffer: Buffer.from(strangersCheckpoint),
      });
      return visit.page.getByText('example.com/elsewhere');
    },
  },
  {
    name: 'setup, a checkpoint that has no place to be kept',
    show: async (visit) => {
      await visit.page.getByLabel(visit.say('ledger:folder')).fill('checkpoints');
      await press(visit, 'ledger:save');
      return visit.page
        .getByRole('region', { name: visit.say('ledger:checkpointTitle') })
        .getByRole('alert')
        .filter({ hasText: /\S/ });
    },
  },
  {
    name: 'setup, the checkpoint is saved',
    show: async (visit) => {
      // Of its own: the stations of two test files have one origin, and neither replaces the checkpoint of the other.
      const folder = await mkdtemp(join(tmpdir(), 'srl-bench-kept-'));
      await visit.page.getByLabel(visit.say('ledger:folder')).fill(folder);
      await press(visit, 'ledger:save');
      const saved = visit.page.getByText(/\.checkpoint$/);
      await saved.waitFor();
      await rm(folder, { recursive: true });
      return saved;
    },
  },
];
