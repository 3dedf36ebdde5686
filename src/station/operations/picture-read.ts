/** `picture.read`: every symbol in a picture, with what each means by its form, and the tag of ours that it shows, however worn. */
import { z } from 'zod';
import type { BenchId } from '../../domain/brand.ts';
import { yearOf } from '../../domain/calendar.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { readScan } from '../../intake/read-scan.ts';
import { readPicture } from '../../tags/read/read-picture.ts';
import { isPlain, type WornReading } from '../../tags/read/worn-reading.ts';
import { defineOperation } from '../operation.ts';

const symbologySchema = z.enum(['Code 128', 'QR Code', 'Data Matrix']);

const evidenceSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('decoded'),
    source: symbologySchema,
    decoder: z.string(),
    text: z.string(),
    /** What was done to the picture before; absent where it was read as it is. */
    restoration: z.string().optional(),
  }),
  z.object({
    kind: z.literal('weighed'),
    source: z.enum(['Code 128', 'printed characters']),
    /** Bands along the bars that carry them, of how many; for the bars alone. */
    bands: z.int().optional(),
    ofBands: z.int().optional(),
    /** Of the ten characters, those that are the likeliest by themselves too. */
    characters: z.int(),
    /** How much likelier than any other bench ID by this source alone, in log likelihood. */
    margin: z.number(),
  }),
]);

const tagSchema = z.discriminatedUnion('outcome', [
  z.object({
    outcome: z.literal('read'),
    benchId: z.string(),
    registered: z.boolean(),
    /** A `restored` reading is a suggestion: a person compares it with the tag before anything is done with it. */
    manner: z.enum(['plain', 'restored']),
    evidence: z.array(evidenceSchema),
  }),
  /** Tags with different bench IDs, or one with another beside it that cannot be read. */
  z.object({ outcome: z.literal('several tags'), benchIds: z.array(z.string()) }),
  z.object({ outcome: z.literal('none') }),
]);

export const pictureRead = defineOperation({
  name: 'picture.read',
  summary: 'Reads every symbol in a picture, and the bench ID of a worn tag.',
  kind: 'query',
  access: 'anyone',
  /** The bytes of a PNG, JPEG or WebP file, base64; at most 20 MB. */
  input: z.object({ pictureBase64: z.base64().max(28_000_000) }),
  output: z.object({
    symbols: z.array(
      z.object({
        symbology: z.string(),
        text: z.string(),
        kind: z.enum([
          'command',
          'place',
          'tag',
          'altered tag',
          'bench ID',
          'marking data',
          'malformed',
          'other',
        ]),
        benchId: z.string().optional(),
      }),
    ),
    tag: tagSchema,
  }),
  run: async ({ ledger, now }, { pictureBase64 }) => {
    const isRegistered = (benchId: BenchId): Promise<boolean> =>
      ledger.read(async (reader) => (await reader.device(benchId)) !== undefined);
    const read = await readPicture(Buffer.from(pictureBase64, 'base64'), { isRegistered });
    if (isRefusal(read)) return read;
    return {
      symbols: read.symbols.map(({ symbology, text }) => {
        const scan = readScan(text, yearOf(now()));
        return { symbology, text, kind: scan.kind, ...('benchId' in scan ? { benchId: scan.benchId } : {}) };
      }),
      tag: await tagOf(read.reading, isRegistered),
    };
  },
});

const tagOf = async (
  reading: WornReading,
  isRegistered: (benchId: BenchId) => Promise<boolean>,
): Promise<z.input<typeof tagSchema>> => {
  switch (reading.kind) {
    case 'read': {
      const { benchId, evidence } = reading;
      const manner = isPlain(evidence) ? 'plain' : 'restored';
      return {
        outcome: 'read',
        benchId,
        registered: await isRegistered(benchId),
        manner,
        evidence: [...evidence],
      };
    }
    case 'several tags':
      return { outcome: 'several tags', benchIds: [...reading.benchIds] };
    case 'none':
      return { outcome: 'none' };
  }
};
