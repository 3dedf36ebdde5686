/** `lifeline.show`: what every inspection of a device saw along its lifeline, and the trend of its least diameter. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { lifelineInspectionSchema } from '../../domain/lifeline/lifeline-inspection.ts';
import { diameterPoints, diameterTrend, diameterTrendSchema } from '../../domain/lifeline/trend.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { recordedLifeline } from '../recorded-lifeline.ts';
import { hiddenInspection } from '../reinspections/blindness.ts';

export const lifelineShow = defineOperation({
  name: 'lifeline.show',
  summary: 'What every inspection of a device saw along its lifeline, and the trend of its least diameter.',
  kind: 'query',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema }),
  output: z.object({
    ratedLengthM: z.number(),
    lifelineDiameterMm: z.number(),
    lifelineMinimumDiameterMm: z.number().optional(),
    /** Newest first. */
    inspections: z.array(lifelineInspectionSchema),
    trend: diameterTrendSchema,
  }),
  run: async (context, { benchId }) => {
    const { ledger, rules } = context;
    const found = await ledger.read(async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const hidden = await hiddenInspection(reader, row.device, context);
      return { ...row, hidden, seen: await recordedLifeline(reader, rules, benchId) };
    });
    if (isRefusal(found)) return found;
    const { modelSheet, seen, hidden } = found;
    if (isRefusal(seen)) return seen;
    const inspections = seen.filter(({ inspection }) => inspection !== hidden);
    const { ratedLengthM, lifelineDiameterMm, lifelineMinimumDiameterMm } = modelSheet;
    return {
      ratedLengthM,
      lifelineDiameterMm,
      ...(lifelineMinimumDiameterMm === undefined ? {} : { lifelineMinimumDiameterMm }),
      inspections,
      trend: diameterTrend(diameterPoints(inspections)),
    };
  },
});
