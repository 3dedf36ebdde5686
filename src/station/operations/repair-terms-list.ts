/** `repair-terms.list`: every model that has held devices here, by length, with what its manufacturer said; the others are to be asked. */
import { z } from 'zod';
import { recordedRepairTermsSchema } from '../../domain/held/return-batch.ts';
import { lifelineMaterialSchema } from '../../domain/model-sheet.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { namesOf } from '../views.ts';

export const repairTermsList = defineOperation({
  name: 'repair-terms.list',
  summary: 'What the manufacturers said of repairing the models that are held, and whom to ask.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    models: z.array(
      z.object({
        modelSheetId: z.string(),
        manufacturer: z.string(),
        model: z.string(),
        ratedLengthM: z.number(),
        lifelineMaterial: lifelineMaterialSchema,
        held: z.int(),
        /** Absent where the manufacturer is still to be asked. */
        terms: recordedRepairTermsSchema.optional(),
      }),
    ),
  }),
  run: (context) =>
    context.ledger.read(async (reader) => {
      const name = await namesOf(reader);
      const terms = new Map(
        (await reader.caseFiles('repair terms')).map((each) => [each.modelSheetId, each]),
      );
      const held = new Map<string, number>();
      const { rows } = await reader.devices({ standing: ['quarantined'], limit: 100_000, offset: 0 });
      for (const { device } of rows) held.set(device.modelSheetId, (held.get(device.modelSheetId) ?? 0) + 1);
      const sheets = (await reader.modelSheets()).filter(
        ({ modelSheetId }) => held.has(modelSheetId) || terms.has(modelSheetId),
      );
      return {
        models: sheets.map(({ modelSheetId, manufacturer, model, ratedLengthM, lifelineMaterial }) => {
          const said = terms.get(modelSheetId);
          return {
            modelSheetId,
            manufacturer,
            model,
            ratedLengthM,
            lifelineMaterial,
            held: held.get(modelSheetId) ?? 0,
            ...(said === undefined ? {} : { terms: { ...said, by: name(said.by) } }),
          };
        }),
      };
    }),
});
