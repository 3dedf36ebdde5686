/** `case`: fall cases, from the first word of a fall to what the investigation found. */
import type { Command } from 'commander';
import { calendarDate } from '../../domain/brand.ts';
import type { InputOf } from '../../station/contract.ts';
import { givenDocuments } from '../given-documents.ts';
import { caseLines } from '../held-lines.ts';
import { deviceMeant, jobOf, type StationCall, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

type Facts = NonNullable<InputOf<'fall-case.open'>['facts']>;

interface FactOptions {
  readonly on?: string;
  readonly user?: string;
  readonly job?: string;
  readonly indicator?: NonNullable<Facts['indicator']>;
  readonly informed?: string;
  readonly bag?: string;
  readonly account?: string;
}

export const addCase = (program: Command, shell: Shell): void => {
  const { words, terminal } = shell;
  const cases = program.command('case').description(words('help-case'));
  const withFacts = (command: Command): Command =>
    command
      .option('--on <date>', words('help-case-on'))
      .option('--user <badge>', words('help-case-user'))
      .option('--job <words>', words('help-case-job'))
      .option('--indicator <state>', words('help-case-indicator'))
      .option('--informed <words>', words('help-case-informed'))
      .option('--bag <number>', words('help-case-bag'))
      .option('--account <words>', words('help-case-account'));

  withFacts(cases.command('open').argument('<device>', words('help-device-id')))
    .option('--linked <device...>', words('help-case-linked'))
    .description(words('help-case-open'))
    .action(async (id: string, options: FactOptions & { linked?: string[] }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const linked = [];
        for (const other of options.linked ?? []) linked.push(await deviceMeant(job, call, other));
        const shown = await call('fall-case.open', { benchId, facts: await factsOf(options, call), linked });
        job.give(shown, caseLines(shown.fallCase, job));
      });
    });

  withFacts(cases.command('note').argument('<case>', words('help-case-number'), Number))
    .option('--photo <file...>', words('help-case-photo'))
    .description(words('help-case-note'))
    .action(async (fallCase: number, options: FactOptions & { photo?: string[] }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const photos = await givenDocuments(options.photo, job);
        const shown = await call('fall-case.note', {
          fallCase,
          facts: await factsOf(options, call),
          photos,
        });
        job.give(shown, caseLines(shown.fallCase, job));
      });
    });

  cases
    .command('close')
    .argument('<case>', words('help-case-number'), Number)
    .requiredOption('--findings <words>', words('help-case-findings'))
    .description(words('help-case-close'))
    .action(async (fallCase: number, { findings }: { findings: string }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const shown = await call('fall-case.close', { fallCase, findings });
        job.give(shown, caseLines(shown.fallCase, job));
      });
    });

  cases
    .command('list')
    .option('--open', words('help-case-list-open'))
    .description(words('help-case-list'))
    .action(async ({ open }: { open?: boolean }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const found = await call('fall-case.list', { open: open ?? false });
        job.give(
          found,
          found.cases.flatMap((each) => [...caseLines(each, job), '']),
        );
      });
    });

  cases
    .command('show')
    .argument('<case>', words('help-case-number'), Number)
    .description(words('help-case-show'))
    .action(async (fallCase: number, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const shown = await call('fall-case.show', { fallCase });
        job.give(shown, caseLines(shown.fallCase, job));
      });
    });
};

const factsOf = async (
  { on, user, job, indicator, informed, bag, account }: FactOptions,
  call: StationCall,
): Promise<Facts> => ({
  ...(on === undefined ? {} : { happenedOn: calendarDate(on) }),
  ...(user === undefined ? {} : { userId: (await call('desk.user', { badge: user })).personId }),
  ...(job === undefined ? {} : { job }),
  ...(indicator === undefined ? {} : { indicator }),
  ...(informed === undefined ? {} : { informed }),
  ...(bag === undefined ? {} : { bagNumber: bag }),
  ...(account === undefined ? {} : { account }),
});
