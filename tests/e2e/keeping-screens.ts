/** The screens on which the record is kept safe: its backups, and one that is opened to be restored. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { badges } from './prepared-depot.ts';
import { go, heading, press, type Screen, signIn, type Visit } from './visit.ts';

const openPanel = async (visit: Visit): Promise<void> => {
  await go(visit, '#/');
  await go(visit, '#/setup/keeping');
};

const fill = async (visit: Visit, path: string): Promise<void> => {
  await visit.page.getByLabel(visit.say('keeping:set.folder'), { exact: true }).fill(path);
  await press(visit, 'keeping:set.save');
};

export const screensOfKeeping: readonly Screen[] = [
  {
    name: 'setup, no backup is made yet',
    show: async (visit) => {
      await signIn(visit, badges.administrator);
      await openPanel(visit);
      return heading(visit, 'keeping:set.title');
    },
  },
  {
    name: 'setup, a folder for backups that cannot be one',
    show: async (visit) => {
      await fill(visit, 'backups');
      return visit.page.getByRole('tabpanel').getByRole('alert').filter({ hasText: /\S/ });
    },
  },
  {
    name: 'setup, a backup is made',
    show: async (visit) => {
      await fill(visit, mkdtempSync(join(tmpdir(), 'backups-')));
      await visit.page.getByText(visit.say('keeping:set.saved')).waitFor();
      await press(visit, 'keeping:now');
      return visit.page.locator('p', { hasText: /srl-bench-[0-9a-z]+-\d+T\d+Z\.zip$/ });
    },
  },
  {
    name: 'setup, a file that is no backup',
    show: async (visit) => {
      await visit.page
        .getByLabel(visit.say('keeping:restore.file'), { exact: true })
        .fill('/no/such/backup.zip');
      await press(visit, 'keeping:restore.open');
      return visit.page
        .getByRole('region', { name: visit.say('keeping:restore.title') })
        .getByRole('alert')
        .filter({ hasText: /\S/ });
    },
  },
  {
    name: 'setup, a backup is compared with the record',
    show: async (visit) => {
      await visit.page.getByLabel(visit.say('keeping:restore.file'), { exact: true }).fill('');
      await press(visit, 'keeping:restore.open');
      return visit.page.getByText(visit.say('keeping:restore.asideText'));
    },
  },
];
