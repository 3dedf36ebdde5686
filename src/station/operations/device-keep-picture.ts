/** `device.keep-picture`: keeps a picture of the marking or of a tag with the record of the device, for its life. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideKeepPicture } from '../../domain/decide/picture.ts';
import { keptPictureSchema, pictureSubjectSchema } from '../../domain/picture.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { picturesOf } from '../kept-pictures.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { stillPictureOf } from '../still-picture.ts';

export const deviceKeepPicture = defineOperation({
  name: 'device.keep-picture',
  summary: 'Keeps a picture with the record of a device.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    of: pictureSubjectSchema,
    /** The bytes of a PNG, JPEG or WebP file, base64; at most 20 MB. */
    pictureBase64: z.base64().max(28_000_000),
  }),
  output: z.object({ picture: keptPictureSchema }),
  run: async (context, { benchId, of, pictureBase64 }) => {
    const known = await context.ledger.read((reader) => deviceIn(reader, benchId));
    if (isRefusal(known)) return known;
    const still = await stillPictureOf(Buffer.from(pictureBase64, 'base64'));
    if (isRefusal(still)) return still;
    const { bytes, mediaType, width, height } = still;
    const sha256 = await context.evidence.put(bytes);
    const picture = { of, sha256, mediaType, byteLength: bytes.length, width, height };
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const kept = (await picturesOf(reader, benchId)).map(({ event }) => event);
      return decideKeepPicture(row.device, picture, kept);
    });
    return isRefusal(result) ? result : { picture };
  },
});
