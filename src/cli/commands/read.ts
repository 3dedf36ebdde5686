/** `read IMAGE…`: the symbols in pictures, what they mean, and the bench ID of the tag that each shows, however worn. */
import type { Command } from 'commander';
import type { Words } from '../../host/words.ts';
import type { OutputOf } from '../../station/contract.ts';
import { readBytes } from '../files.ts';
import { jobOf, withAnyStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

const tagLines = (tag: OutputOf<'picture.read'>['tag'], words: Words): readonly string[] => {
  switch (tag.outcome) {
    case 'read':
      return [`  ${words(`tag-read-${tag.manner}`, { benchId: tag.benchId })}`];
    case 'several tags':
      return [`  ${words('tag-several', { benchIds: tag.benchIds.join(', ') })}`];
    case 'none':
      return [];
  }
};

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
        pictures.flatMap(({ file, symbols, tag }) => [
          file,
          ...tagLines(tag, words),
          ...(symbols.length === 0 && tag.outcome === 'none' ? [`  ${words('no-symbols')}`] : []),
          ...symbols.map(
            ({ symbology, text, benchId }) => `  ${[symbology, text, benchId ?? ''].join('  ').trimEnd()}`,
          ),
        ]),
      );
    });
};
