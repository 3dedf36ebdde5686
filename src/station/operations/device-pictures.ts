/** `device.pictures`: the pictures that are kept with the record of a device, newest first, each small. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { keptPictureViewSchema, picturesOf, type RecordedPicture, stateOfPicture } from '../kept-pictures.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole, type OperationContext } from '../operation.ts';
import { namesOf } from '../views.ts';

export const devicePictures = defineOperation({
  name: 'device.pictures',
  summary: 'The pictures that are kept with the record of a device.',
  kind: 'query',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema, limit: z.int().min(1).max(100).default(12) }),
  output: z.object({ pictures: z.array(keptPictureViewSchema), total: z.int() }),
  run: async (context, { benchId, limit }) => {
    const found = await context.ledger.read(async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      return { recorded: await picturesOf(reader, benchId), nameOf: await namesOf(reader) };
    });
    if (isRefusal(found)) return found;
    const { recorded, nameOf } = found;
    const newest = recorded.toReversed().slice(0, limit);
    const pictures = await Promise.all(newest.map((each) => viewOf(context, each, nameOf)));
    return { pictures, total: recorded.length };
  },
});

const viewOf = async (
  { evidence }: OperationContext,
  { event: { type: _type, benchId: _benchId, ...picture }, on, by }: RecordedPicture,
  nameOf: (personId: string) => string,
): Promise<z.input<typeof keptPictureViewSchema>> => ({
  ...picture,
  keptOn: on,
  keptBy: nameOf(by),
  ...(await stateOfPicture(evidence, picture)),
});
