/** `export DIR`: everything that the station knows, in a folder of files that say what they are. */
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { Failure } from '../failure.ts';
import { jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

const pollMs = 50;

export const addExport = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('export')
    .argument('<dir>', words('help-export-dir'))
    .description(words('help-export'))
    .action(async (dir: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const { job: number } = await call('record.export', { folder: resolve(dir) });
        for (;;) {
          const status = await call('export.status', { job: number });
          if (status.state === 'refused') {
            const { code, sentence } = status;
            throw new Failure({ code, sentence, field: 'dir' });
          }
          if (status.state === 'exported') {
            const { folder, events, files, pictures, picturesLost } = status;
            job.give(status, [
              words('export-done', { folder, events, files, pictures }),
              ...(picturesLost === 0 ? [] : [words('export-pictures-lost', { count: picturesLost })]),
            ]);
            return;
          }
          await new Promise((resolvePause) => setTimeout(resolvePause, pollMs));
        }
      });
    });
};
