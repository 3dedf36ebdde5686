/** `inspection.pictures`: the pictures of an inspection, by check, oldest first, each small. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { findingPicturesOf, findingPictureViewSchema, stateOfPicture } from '../kept-pictures.ts';
import { caseIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { blindFault } from '../reinspections/blindness.ts';
import { namesOf } from '../views.ts';

export const inspectionPictures = defineOperation({
  name: 'inspection.pictures',
  summary: 'The pictures of what was seen in an inspection.',
  kind: 'query',
  access: everyRole,
  input: z.object({ inspection: z.int().positive(), check: z.string().optional() }),
  output: z.object({ pictures: z.array(findingPictureViewSchema) }),
  run: async (context, { inspection, check }) => {
    const { ledger, evidence, rules } = context;
    const found = await ledger.read(async (reader) => {
      const open = await caseIn(reader, inspection, rules);
      if (isRefusal(open)) return open;
      const hidden = await blindFault(reader, open.device, context, inspection);
      if (hidden !== undefined) return hidden;
      return {
        recorded: await findingPicturesOf(reader, open.device.benchId),
        nameOf: await namesOf(reader),
      };
    });
    if (isRefusal(found)) return found;
    const { recorded, nameOf } = found;
    const wanted = recorded.filter(
      ({ event }) => event.inspection === inspection && (check === undefined || event.check === check),
    );
    const pictures = await Promise.all(
      wanted.map(
        async ({ event: { type: _type, inspection: _number, benchId: _benchId, ...picture }, on, by }) => ({
          ...picture,
          keptOn: on,
          keptBy: nameOf(by),
          ...(await stateOfPicture(evidence, picture)),
        }),
      ),
    );
    return { pictures };
  },
});
