/** `backup [FILE]` and `restore FILE`: the record in one file, and back again. */
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { calendarDate } from '../../domain/brand.ts';
import type { OutputOf } from '../../station/contract.ts';
import { Failure } from '../failure.ts';
import { type Job, jobOf, withStation } from '../job.ts';
import { pinFrom } from '../pin-from.ts';
import type { Shell } from '../terminal.ts';
import { untilEnded } from '../until-ended.ts';
import { dateText } from '../wording.ts';

export const addBackup = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('backup')
    .argument('[file]', words('help-backup-file'))
    .description(words('help-backup'))
    .action(async (file: string | undefined, _options, command: Command) => {
      const job = jobOf(command, terminal);
      const end = await withStation(job, async (call) => {
        const request = file === undefined ? {} : { file: resolve(file) };
        const { job: number } = await call('backup.make', request);
        return untilEnded(() => call('backup.status', { job: number }));
      });
      if (end.state === 'refused')
        throw new Failure({ code: end.code, sentence: end.sentence, field: 'file' });
      const { file: path, record, pictures, removed, onSameDisk } = end;
      job.give(end, [
        words('backup-made', { path, events: record.size, pictures }),
        ...(removed === 0 ? [] : [words('backup-removed', { count: removed })]),
        ...(onSameDisk ? [words('backup-same-disk')] : []),
      ]);
    });

  program
    .command('restore')
    .argument('<file>', words('help-restore-file'))
    .description(words('help-restore'))
    .option('--yes', words('help-restore-yes'))
    .option('--pin-file <file>', words('help-pin-file'))
    .action(async (file: string, options: RestoreOptions, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const { job: number } = await call('restore.open', { file: resolve(file) });
        const end = await untilEnded(() => call('restore.status', { job: number }));
        if (end.state === 'refused')
          throw new Failure({ code: end.code, sentence: end.sentence, field: 'file' });
        if (options.yes !== true) {
          job.give(end, [...backupLines(end, job), words('restore-not-yet')]);
          return;
        }
        const pin = end.comparison === undefined ? {} : { pin: await pinFrom(options.pinFile, job) };
        const { aside } = await call('restore.run', { job: number, ...pin });
        job.give({ ...end, restored: true, ...(aside === undefined ? {} : { aside }) }, [
          ...backupLines(end, job),
          words('restore-done'),
          ...(aside === undefined ? [] : [words('restore-aside', { folder: aside })]),
        ]);
      });
    });
};

interface RestoreOptions {
  readonly yes?: boolean;
  readonly pinFile?: string;
}

type Ready = Extract<OutputOf<'restore.status'>, { state: 'ready' }>;

const backupLines = (backup: Ready, { words, language }: Job): readonly string[] => {
  const { stationName, madeAt, record, devices, pictures, picturesLost, comparison } = backup;
  const date = dateText(calendarDate(madeAt.slice(0, 10)), language);
  return [
    words('restore-backup', { station: stationName, date, events: record.size, devices, pictures }),
    ...(picturesLost === 0 ? [] : [words('restore-lost', { count: picturesLost })]),
    ...(comparison === undefined ? [] : [comparisonLine(comparison, words)]),
  ];
};

const comparisonLine = (
  { same, onlyHere, onlyInBackup }: NonNullable<Ready['comparison']>,
  words: Job['words'],
): string =>
  words('restore-comparison', {
    same,
    here: onlyHere.events,
    inspections: onlyHere.signedInspections,
    there: onlyInBackup.events,
  });
