/** `report inspection|device|register|due|held|return`: reports of the record as files. */
import { resolve } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { type CalendarDate, calendarDateSchema } from '../../domain/brand.ts';
import { standingSchema } from '../../domain/device.ts';
import type { InputOf } from '../../station/contract.ts';
import { deviceMeant, type Job, jobOf, type StationCall, withStation } from '../job.ts';
import { madeReport } from '../made-report.ts';
import type { Shell } from '../terminal.ts';
import { wholeNumber } from './device.ts';

type Request = InputOf<'report.make'>;
type Subject = Request['of'];
type HeldList = Extract<Subject, { kind: 'held' }>['list'];

interface ReportOptions {
  readonly format: 'pdf' | 'csv' | 'xlsx';
  readonly in?: 'en' | 'es' | 'both';
  readonly paper: 'a4' | 'letter';
  readonly out?: string;
}

export const addReport = (program: Command, { words, terminal }: Shell): void => {
  const report = program.command('report').description(words('help-report'));

  const kind = (name: string, summary: Parameters<typeof words>[0]): Command =>
    report
      .command(name)
      .description(words(summary))
      .addOption(
        new Option('--format <format>', words('help-report-format'))
          .choices(['pdf', 'csv', 'xlsx'])
          .default('pdf'),
      )
      .addOption(new Option('--in <languages>', words('help-report-in')).choices(['en', 'es', 'both']))
      .addOption(
        new Option('--paper <paper>', words('help-report-paper')).choices(['a4', 'letter']).default('a4'),
      )
      .option('--out <file>', words('help-report-out'));

  const make = async (
    command: Command,
    subject: (call: StationCall, job: Job) => Promise<Subject> | Subject,
  ): Promise<void> => {
    const job = jobOf(command, terminal);
    const options: ReportOptions = command.opts();
    await withStation(job, async (call) => {
      const request: Request = {
        of: await subject(call, job),
        format: options.format,
        language: options.in ?? job.language,
        paper: options.paper,
        ...(options.out === undefined ? {} : { file: resolve(options.out) }),
      };
      const made = await madeReport(call, request);
      job.give(made, [words('report-made', { path: made.path })]);
    });
  };

  kind('inspection', 'help-report-inspection')
    .argument('<number>', words('help-report-inspection-number'), wholeNumber(words))
    .action((inspection: number, _options, command: Command) =>
      make(command, () => ({ kind: 'inspection', inspection })),
    );

  kind('device', 'help-report-device')
    .argument('<id>', words('help-device-id'))
    .action((id: string, _options, command: Command) =>
      make(command, async (call, job) => ({ kind: 'device', benchId: await deviceMeant(job, call, id) })),
    );

  kind('register', 'help-report-register')
    .option('--search <text>', words('help-search'))
    .addOption(new Option('--standing <standing>', words('help-standing')).choices(standingSchema.options))
    .addOption(new Option('--due <state>', words('help-due')).choices(['overdue', 'due soon']))
    .action(({ search, standing, due }, command: Command) =>
      make(command, () => ({
        kind: 'register',
        ...(search === undefined ? {} : { search }),
        ...(standing === undefined ? {} : { standing: [standing] }),
        ...(due === undefined ? {} : { due }),
      })),
    );

  kind('due', 'help-report-due')
    .option('--until <date>', words('help-report-until'), dayFrom(words))
    .action(({ until }: { readonly until?: CalendarDate }, command: Command) =>
      make(command, () => ({ kind: 'due', ...(until === undefined ? {} : { until }) })),
    );

  kind('held', 'help-report-held')
    .addOption(
      new Option('--list <list>', words('help-report-held-list'))
        .choices(['evidence', 'fall cases', 'return batches'])
        .default('evidence'),
    )
    .action(({ list }: { readonly list: HeldList }, command: Command) =>
      make(command, () => ({ kind: 'held', list })),
    );

  kind('return', 'help-report-return')
    .argument('<id...>', words('help-device-id'))
    .addOption(
      new Option('--ask <what>', words('help-report-ask'))
        .choices(['repair', 'replacement', 'evidence'])
        .default('evidence'),
    )
    .action((ids: string[], { ask }, command: Command) =>
      make(command, async (call, job) => {
        const benchIds = [];
        for (const id of ids) benchIds.push(await deviceMeant(job, call, id));
        return { kind: 'return', benchIds, ask };
      }),
    );
};

export const dayFrom =
  (words: Job['words']) =>
  (text: string): CalendarDate => {
    const day = calendarDateSchema.safeParse(text);
    if (day.success) return day.data;
    throw new InvalidArgumentError(words('date-shape'));
  };
