/** `lifeline.show`: what every inspection of a device saw along its lifeline, and the trend of its least diameter. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { lifelineInspectionSchema } from '../../domain/lifeline/lifeline-inspection.ts';
import { diameterPoints, diameterTrend, diameterTrendSchema } from '../../domain/lifeline/trend.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { recordedLifeline } from '../recorded-lifeline.ts';

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
  run: async ({ ledger, rules }, { benchId }) => {
    const found = await ledger.read(async (reader) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      return { ...row, seen: await recordedLifeline(reader, rules, benchId) };
    });
    if (isRefusal(found)) return found;
    const { modelSheet, seen: inspections } = found;
    if (isRefusal(inspections)) return inspections;
    const { ratedLengthM, lifelineDiameterMm, lifelineMinimumDiameterMm } = modelSheet;
    return {
      ratedLengthM,
      lifelineDiameterMm,
      ...(lifelineMinimumDiameterMm === undefined ? {} : { lifelineMinimumDiameterMm }),
      inspections: [...inspections],
      trend: diameterTrend(diameterPoints(inspections)),
    };
  },
});
