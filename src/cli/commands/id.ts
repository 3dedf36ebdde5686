/** `id new`, `id check`, `id repair`: bench IDs. */
import type { Command } from 'commander';
import { refusal } from '../../domain/refusal.ts';
import type { OutputOf } from '../../station/contract.ts';
import { Failure, failureOf } from '../failure.ts';
import { type Job, jobOf, withAnyStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

export const addId = (program: Command, { words, terminal }: Shell): void => {
  const id = program.command('id').description(words('help-id'));

  id.command('new')
    .description(words('help-id-new'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const made = await withAnyStation(job, true, (call) => call('bench-id.new', {}));
      job.give(made, [made.shown]);
    });

  id.command('check')
    .argument('<text>', words('help-id-text'))
    .description(words('help-id-check'))
    .action(async (text: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      const checked = await check(job, text);
      if (checked.kind !== 'exact')
        throw failureOf(refusal('bench-id-not-exact', { text }, 'text'), job.language);
      job.give(checked, [exactLine(checked, job)]);
    });

  id.command('repair')
    .argument('<text>', words('help-id-text-worn'))
    .description(words('help-id-repair'))
    .action(async (text: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      const checked = await check(job, text);
      if (checked.kind === 'beyond repair') {
        throw new Failure({
          code: 'bench-id-beyond-repair',
          sentence: words('id-beyond-repair', { text }),
          field: 'text',
        });
      }
      job.give(checked, [
        checked.kind === 'exact' ? exactLine(checked, job) : words('id-suggestion', { shown: checked.shown }),
      ]);
    });
};

type Checked = Exclude<OutputOf<'bench-id.check'>, { kind: 'malformed' }>;

const check = async (job: Job, text: string): Promise<Checked> => {
  const checked = await withAnyStation(job, true, (call) => call('bench-id.check', { text }));
  if (checked.kind !== 'malformed') return checked;
  const fault =
    (['too short', 'too long'] as const).find((why) => why === checked.why) ?? 'character not used';
  throw failureOf(
    refusal('bench-id-malformed', { text, why: job.words(`id-${fault}`) }, 'text'),
    job.language,
  );
};

const exactLine = ({ shown, registered }: Extract<Checked, { kind: 'exact' }>, { words }: Job): string =>
  words(registered ? 'id-registered' : 'id-not-registered', { shown });
