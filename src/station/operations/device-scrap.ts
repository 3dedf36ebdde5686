/** `device.scrap`: the lifeline is cut and the marking defaced, before a witness, with a photo. It is final. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideScrap } from '../../domain/decide/held/scrap.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { heldViewSchema } from '../held-view.ts';
import { deviceIn, personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { givenDocumentSchema, putDocuments } from '../put-document.ts';
import { record } from '../record.ts';
import { showHeld } from '../show-held.ts';

export const deviceScrap = defineOperation({
  name: 'device.scrap',
  summary: 'Scraps a held device, before a witness. It is final.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    lifelineCut: z.boolean(),
    markingDefaced: z.boolean(),
    /** A person's ID. */
    witness: z.string(),
    photos: z.array(givenDocumentSchema).max(12),
  }),
  output: z.object({ held: heldViewSchema }),
  run: async (context, { benchId, lifelineCut, markingDefaced, witness, photos }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const known = await context.ledger.read((reader) => deviceIn(reader, benchId));
    if (isRefusal(known)) return known;
    const files = await putDocuments(context.evidence, photos);
    if (isRefusal(files)) return files;
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const seen = await personIn(reader, witness);
      if (isRefusal(seen)) return seen;
      const scrapping = { lifelineCut, markingDefaced, witness: seen, photos: files };
      return decideScrap(row.device, scrapping, person);
    });
    return isRefusal(result) ? result : showHeld(context, benchId);
  },
});
