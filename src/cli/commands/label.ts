/** `label CODE --out FILE`: the label of a place where held devices are kept, as PDF. */
import type { Command } from 'commander';
import { writeBytes } from '../files.ts';
import { jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

export const addLabel = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('label')
    .argument('<code>', words('help-label-code'))
    .description(words('help-label'))
    .requiredOption('--out <file>', words('help-tag-out'))
    .action(async (code: string, { out }: { readonly out: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const label = await withStation(job, (call) => call('bin-label.show', { code }));
      await writeBytes(out, Buffer.from(label.pdfBase64, 'base64'), job.language);
      job.give({ code, file: out, widthMm: label.widthMm, heightMm: label.heightMm }, [
        words('label-written', { code, file: out }),
      ]);
    });
};
