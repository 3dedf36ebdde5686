/** `read IMAGE…`: the symbols in pictures, and what they mean. */
import type { Command } from 'commander';
import { readBytes } from '../files.ts';
import { jobOf, withAnyStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

export const addRead = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('read')
    .argument('<image...>', words('help-read-image'))
    .description(words('help-read'))
    .action(async (images: string[], _options, command: Command) => {
      const job = jobOf(command, terminal);
      const pictures = await withAnyStation(job, false, async (call) => {
        const found = [];
        for (const file of images) {
          const pictureBase64 = (await readBytes(file, job.language)).toString('base64');
          found.push({ file, ...(await call('picture.read', { pictureBase64 })) });
        }
        return found;
      });
      job.give(
        { pictures },
        pictures.flatMap(({ file, symbols }) => [
          file,
          ...(symbols.length === 0 ? [`  ${words('no-symbols')}`] : []),
          ...symbols.map(
            ({ symbology, text, benchId }) => `  ${[symbology, text, benchId ?? ''].join('  ').trimEnd()}`,
          ),
        ]),
      );
    });
};
