/** The few addresses outside that may be opened, in the browser of the PC, each time after a person said so. */
import { shell } from 'electron';
import { z } from 'zod';
import type { Words } from '../src/host/words.ts';
import { askInBox } from './box.ts';
import list from './links.json' with { type: 'json' };
import type { ShellWindows } from './windows.ts';

/**
 * The texts of the rules that the product rests on, at the place where their issuer publishes them (addresses from memory).
 * An address counts whole: no other page of the same site, nothing behind a question mark, nothing but https.
 */
const linkSchema = z.object({
  name: z.enum(['rule-general-industry', 'rule-construction']),
  address: z.url({ protocol: /^https$/ }),
});
export type Link = z.output<typeof linkSchema>;

export const links: readonly Link[] = z.array(linkSchema).parse(list);

export const openLink = async (windows: ShellWindows, words: Words, address: string): Promise<void> => {
  const link = links.find((each) => each.address === address);
  if (link === undefined) return;
  const answer = await askInBox<'open' | 'stay'>(windows, {
    type: 'question',
    message: words('link-opens', { host: new URL(link.address).host }),
    detail: words('link-opens-detail', { address: link.address }),
    answers: [
      { answer: 'stay', label: words('link-stay') },
      { answer: 'open', label: words('link-open') },
    ],
    otherwise: 'stay',
  });
  if (answer === 'open') await shell.openExternal(link.address);
};
