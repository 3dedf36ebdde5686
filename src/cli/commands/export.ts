/** `export DIR`: everything that the station knows, in a folder of files that say what they are. */
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { Failure } from '../failure.ts';
import { jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { untilEnded } from '../until-ended.ts';

export const addExport = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('export')
    .argument('<dir>', words('help-export-dir'))
    .description(words('help-export'))
    .action(async (dir: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      const end = await withStation(job, async (call) => {
        const { job: number } = await call('record.export', { folder: resolve(dir) });
        return untilEnded(() => call('export.status', { job: number }));
      });
      if (end.state === 'refused')
        throw new Failure({ code: end.code, sentence: end.sentence, field: 'dir' });
      const { folder, events, files, pictures, picturesLost } = end;
      job.give(end, [
        words('export-done', { folder, events, files, pictures }),
        ...(picturesLost === 0 ? [] : [words('export-pictures-lost', { count: picturesLost })]),
      ]);
    });
};
