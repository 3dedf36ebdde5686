/** `inspection.keep-picture`: keeps a picture of what was seen at a check of an open inspection: a finding, or an element of the marking. */
import { z } from 'zod';
import { decideKeepFindingPicture } from '../../domain/decide/picture.ts';
import { findingPictureSchema } from '../../domain/picture.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { findingPicturesOf } from '../kept-pictures.ts';
import { caseIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { pictureBase64Schema, putPicture } from '../put-picture.ts';
import { record } from '../record.ts';

export const inspectionKeepPicture = defineOperation({
  name: 'inspection.keep-picture',
  summary: 'Keeps a picture of what was seen at a check of an open inspection.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    inspection: z.int().positive(),
    check: z.string(),
    pictureBase64: pictureBase64Schema,
  }),
  output: z.object({ picture: findingPictureSchema }),
  run: async (context, { inspection, check, pictureBase64 }) => {
    const known = await context.ledger.read((reader) => caseIn(reader, inspection, context.rules));
    if (isRefusal(known)) return known;
    const file = await putPicture(context.evidence, pictureBase64);
    if (isRefusal(file)) return file;
    const picture = { check, ...file };
    const result = await record(context, async (reader) => {
      const open = await caseIn(reader, inspection, context.rules);
      if (isRefusal(open)) return open;
      const kept = (await findingPicturesOf(reader, open.device.benchId))
        .map(({ event }) => event)
        .filter((event) => event.inspection === inspection);
      return decideKeepFindingPicture(open.inspection, open, picture, kept);
    });
    return isRefusal(result) ? result : { picture };
  },
});
