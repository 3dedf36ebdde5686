/** `evidence.list`: every picture that the record of a device names, newest first, and whether it still is what was kept. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { pictureFileSchema, pictureSubjectSchema } from '../../domain/picture.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { namesPicture } from '../kept-pictures.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { hiddenInspection } from '../reinspections/blindness.ts';
import { namesOf } from '../views.ts';

const kept = {
  seq: z.int(),
  ...pictureFileSchema.shape,
  keptOn: calendarDateSchema,
  /** A person's name. */
  keptBy: z.string(),
  state: z.enum(['kept', 'missing', 'changed']),
};

export const evidenceList = defineOperation({
  name: 'evidence.list',
  summary: 'Every picture that the record of a device names.',
  kind: 'query',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema }),
  output: z.object({
    pictures: z.array(
      z.discriminatedUnion('with', [
        z.object({ with: z.literal('device'), of: pictureSubjectSchema, ...kept }),
        z.object({
          with: z.literal('inspection'),
          inspection: z.int(),
          check: z.string(),
          ...kept,
        }),
      ]),
    ),
  }),
  run: async (context, { benchId }) => {
    const { ledger, evidence } = context;
    const found = await ledger.read(async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      return {
        events: await reader.eventsOf(benchId),
        hidden: await hiddenInspection(reader, row.device, context),
        nameOf: await namesOf(reader),
      };
    });
    if (isRefusal(found)) return found;
    const recorded = found.events
      .filter(namesPicture)
      .filter(({ event }) => event.type === 'device.picture-kept' || event.inspection !== found.hidden)
      .toReversed();
    const pictures = await Promise.all(
      recorded.map(async ({ seq, on, by, event }) => {
        const bytes = await evidence.get(event.sha256);
        const state = typeof bytes === 'string' ? bytes : ('kept' as const);
        const { sha256, mediaType, byteLength, width, height } = event;
        const file = { sha256, mediaType, byteLength, width, height };
        const entry = { seq, ...file, keptOn: on, keptBy: found.nameOf(by), state };
        return event.type === 'device.picture-kept'
          ? { with: 'device' as const, of: event.of, ...entry }
          : { with: 'inspection' as const, inspection: event.inspection, check: event.check, ...entry };
      }),
    );
    return { pictures };
  },
});
