/** `device.keep-picture`: keeps a picture of the marking or of a tag with the record of the device, for its life. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideKeepPicture } from '../../domain/decide/picture.ts';
import { keptPictureSchema, pictureSubjectSchema } from '../../domain/picture.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { picturesOf } from '../kept-pictures.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { pictureBase64Schema, putPicture } from '../put-picture.ts';
import { record } from '../record.ts';

export const deviceKeepPicture = defineOperation({
  name: 'device.keep-picture',
  summary: 'Keeps a picture with the record of a device.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    of: pictureSubjectSchema,
    pictureBase64: pictureBase64Schema,
  }),
  output: z.object({ picture: keptPictureSchema }),
  run: async (context, { benchId, of, pictureBase64 }) => {
    const known = await context.ledger.read((reader) => deviceIn(reader, benchId));
    if (isRefusal(known)) return known;
    const file = await putPicture(context.evidence, pictureBase64);
    if (isRefusal(file)) return file;
    const picture = { of, ...file };
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const kept = (await picturesOf(reader, benchId)).map(({ event }) => event);
      return decideKeepPicture(row.device, picture, kept);
    });
    return isRefusal(result) ? result : { picture };
  },
});
