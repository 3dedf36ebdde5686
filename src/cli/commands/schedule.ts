/** `schedule …`: what is due, the plan of the bench, whom to call, and the files for a calendar and for fetching. */
import { resolve } from 'node:path';
import { type Command, Option } from 'commander';
import type { CalendarDate } from '../../domain/brand.ts';
import type { InputOf } from '../../station/contract.ts';
import { readJson } from '../files.ts';
import { jobOf, withStation } from '../job.ts';
import { madeReport } from '../made-report.ts';
import { capacityLines, dueLines, noticeLines, planLines } from '../schedule-lines.ts';
import type { Shell } from '../terminal.ts';
import { whilePlanning } from '../while-planning.ts';
import { dayFrom } from './report.ts';

/** What a file says is for the station to judge. */
type Capacity = InputOf<'bench.set-capacity'>['capacity'];

interface FileOptions {
  readonly from?: CalendarDate;
  readonly until?: CalendarDate;
  readonly in?: 'en' | 'es' | 'both';
  readonly format?: 'pdf' | 'csv' | 'xlsx';
  readonly paper?: 'a4' | 'letter';
  readonly out?: string;
}

export const addSchedule = (program: Command, { words, terminal }: Shell): void => {
  const schedule = program.command('schedule').description(words('help-schedule'));

  schedule
    .command('plan')
    .description(words('help-schedule-plan'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const plan = await withStation(job, (call) =>
        whilePlanning(job, call, () => call('schedule.plan', {})),
      );
      job.give(plan, planLines(plan, job));
    });

  schedule
    .command('due')
    .description(words('help-schedule-due'))
    .addOption(
      new Option('--by <period>', words('help-schedule-by')).choices(['week', 'month']).default('week'),
    )
    .action(async ({ by }: { by: 'week' | 'month' }, command: Command) => {
      const job = jobOf(command, terminal);
      const found = await withStation(job, (call) => call('schedule.due', { by }));
      job.give(found, dueLines(found, job));
    });

  schedule
    .command('notices')
    .description(words('help-schedule-notices'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const notices = await withStation(job, (call) =>
        whilePlanning(job, call, () => call('schedule.notices', {})),
      );
      job.give(notices, noticeLines(notices, job));
    });

  schedule
    .command('capacity')
    .description(words('help-schedule-capacity'))
    .option('--set <file>', words('help-schedule-set'))
    .action(async ({ set }: { set?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const wanted = set === undefined ? undefined : await readJson(resolve(set), job.language);
      await withStation(job, async (call) => {
        if (wanted !== undefined) await call('bench.set-capacity', { capacity: wanted as Capacity });
        const capacity = await call('bench.capacity', {});
        job.give(capacity, capacityLines(capacity, job));
      });
    });

  const file = (name: string, summary: Parameters<typeof words>[0]): Command =>
    schedule
      .command(name)
      .description(words(summary))
      .option('--from <date>', words('help-schedule-from'), dayFrom(words))
      .option('--until <date>', words('help-schedule-until'), dayFrom(words))
      .addOption(new Option('--in <languages>', words('help-report-in')).choices(['en', 'es', 'both']))
      .option('--out <file>', words('help-report-out'));

  const make = async (
    format: InputOf<'report.make'>['format'],
    { from, until, in: language, paper, out }: FileOptions,
    command: Command,
  ): Promise<void> => {
    const job = jobOf(command, terminal);
    const made = await withStation(job, (call) =>
      whilePlanning(job, call, () =>
        madeReport(call, {
          of: {
            kind: 'bench-plan',
            ...(from === undefined ? {} : { from }),
            ...(until === undefined ? {} : { until }),
          },
          format,
          language: language ?? job.language,
          ...(paper === undefined ? {} : { paper }),
          ...(out === undefined ? {} : { file: resolve(out) }),
        }),
      ),
    );
    job.give(made, [words(format === 'ics' ? 'calendar-made' : 'report-made', { path: made.path })]);
  };

  file('calendar', 'help-schedule-calendar').action((options: FileOptions, command: Command) =>
    make('ics', options, command),
  );

  file('pick-list', 'help-schedule-pick-list')
    .addOption(
      new Option('--format <format>', words('help-report-format'))
        .choices(['pdf', 'csv', 'xlsx'])
        .default('pdf'),
    )
    .addOption(
      new Option('--paper <paper>', words('help-report-paper')).choices(['a4', 'letter']).default('a4'),
    )
    .action((options: FileOptions, command: Command) => make(options.format, options, command));
};
