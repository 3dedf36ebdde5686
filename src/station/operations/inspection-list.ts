/** `inspection.list`: signed inspections over the fleet, newest first, by day, person, verdict and device. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { hiddenInspection } from '../reinspections/blindness.ts';
import { namesOf } from '../views.ts';

export const inspectionList = defineOperation({
  name: 'inspection.list',
  summary: 'Signed inspections over the fleet, newest first.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    /** Signed on this day or later, and on that day or earlier. */
    from: calendarDateSchema.optional(),
    until: calendarDateSchema.optional(),
    /** Signed by this person. */
    personId: z.string().optional(),
    verdict: z.enum(['pass', 'remove from service']).optional(),
    benchId: benchIdSchema.optional(),
    limit: z.int().min(1).max(500).default(100),
    offset: z.int().min(0).default(0),
  }),
  output: z.object({
    inspections: z.array(
      z.object({
        inspection: z.int(),
        benchId: benchIdSchema,
        manufacturer: z.string(),
        model: z.string(),
        serial: z.string(),
        signedOn: calendarDateSchema,
        /** A person's name. */
        signedBy: z.string(),
        verdict: z.enum(['pass', 'remove from service', 'incomplete']),
        /** How many reasons it has. */
        reasons: z.int(),
        dueOn: calendarDateSchema.optional(),
        /** The blind re-inspection that it is the second inspection of. */
        reinspection: z.int().optional(),
      }),
    ),
    /** There are more after these. */
    more: z.boolean(),
  }),
  run: (context, { limit, ...query }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const found = await reader.signedInspections({ ...query, limit: limit + 1 });
      const nameOf = await namesOf(reader);
      const inspections = [];
      for (const { inspection, benchId, signed, reinspection } of found.slice(0, limit)) {
        const row = await reader.device(benchId);
        if (row === undefined || signed === undefined) continue;
        if ((await hiddenInspection(reader, row.device, context)) === inspection) continue;
        const { verdict, dueOn } = signed;
        inspections.push({
          inspection,
          benchId,
          manufacturer: row.modelSheet.manufacturer,
          model: row.modelSheet.model,
          serial: row.device.serial,
          signedOn: signed.on,
          signedBy: nameOf(signed.by),
          verdict: verdict.kind,
          reasons: verdict.kind === 'pass' ? 0 : verdict.reasons.length,
          ...(dueOn === undefined ? {} : { dueOn }),
          ...(reinspection === undefined ? {} : { reinspection }),
        });
      }
      return { inspections, more: found.length > limit };
    }),
});
