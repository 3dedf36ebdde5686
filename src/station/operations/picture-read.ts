/** `picture.read`: every symbol in a picture, with what each means by its form. */
import { z } from 'zod';
import { yearOf } from '../../domain/calendar.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { readScan } from '../../intake/read-scan.ts';
import { readSymbols } from '../../tags/read/read-symbols.ts';
import { defineOperation } from '../operation.ts';

export const pictureRead = defineOperation({
  name: 'picture.read',
  summary: 'Reads every symbol in a picture.',
  kind: 'query',
  access: 'anyone',
  /** The bytes of a PNG or JPEG file, base64; at most 20 MB. */
  input: z.object({ pictureBase64: z.base64().max(28_000_000) }),
  output: z.object({
    symbols: z.array(
      z.object({
        symbology: z.string(),
        text: z.string(),
        kind: z.enum(['command', 'tag', 'altered tag', 'bench ID', 'marking data', 'malformed', 'other']),
        benchId: z.string().optional(),
      }),
    ),
  }),
  run: async (context, { pictureBase64 }) => {
    const symbols = await readSymbols(Buffer.from(pictureBase64, 'base64'));
    if (isRefusal(symbols)) return symbols;
    return {
      symbols: symbols.map(({ symbology, text }) => {
        const scan = readScan(text, yearOf(context.now()));
        return { symbology, text, kind: scan.kind, ...('benchId' in scan ? { benchId: scan.benchId } : {}) };
      }),
    };
  },
});
