/** `bench-card --out FILE`: one page for the bench, as PDF. */
import { type Command, Option } from 'commander';
import type { InputOf } from '../../station/contract.ts';
import { writeBytes } from '../files.ts';
import { jobOf, withAnyStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

interface BenchCardFlags {
  readonly out: string;
  readonly paper: NonNullable<InputOf<'bench-card.show'>['paper']>;
  readonly in: NonNullable<InputOf<'bench-card.show'>['languages']>;
}

export const addBenchCard = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('bench-card')
    .description(words('help-bench-card'))
    .requiredOption('--out <file>', words('help-tag-out'))
    .addOption(
      new Option('--paper <paper>', words('help-bench-card-paper')).choices(['A4', 'Letter']).default('A4'),
    )
    .addOption(
      new Option('--in <languages>', words('help-bench-card-in'))
        .choices(['en', 'es', 'both'])
        .default('both'),
    )
    .action(async ({ out, paper, in: languages }: BenchCardFlags, command: Command) => {
      const job = jobOf(command, terminal);
      const card = await withAnyStation(job, false, (call) => call('bench-card.show', { paper, languages }));
      await writeBytes(out, Buffer.from(card.pdfBase64, 'base64'), job.language);
      job.give({ file: out, paper, languages }, [words('bench-card-written', { paper, file: out })]);
    });
};
