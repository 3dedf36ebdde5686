/** `reinspection.list`: the devices that wait for a blind second inspection, the pairs that are signed, and how many could be drawn. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { drawableDevices } from '../reinspections/drawable-devices.ts';
import { reinspectionDays } from '../reinspections/reinspection-days.ts';
import {
  pairSchema,
  pairViews,
  waitingReinspectionSchema,
  waitingViews,
} from '../reinspections/reinspection-view.ts';

export const reinspectionList = defineOperation({
  name: 'reinspection.list',
  summary: 'The devices that wait for a blind second inspection, and the pairs that are signed.',
  kind: 'query',
  access: everyRole,
  input: z.object({ limit: z.int().min(1).max(500).default(50) }),
  output: z.object({
    waiting: z.array(waitingReinspectionSchema),
    /** The latest first, at most as many as asked for; `pairs` counts all. */
    signed: z.array(pairSchema),
    pairs: z.int(),
    /** How many devices could be drawn now. */
    drawable: z.int(),
    /** Within how many days of the first inspection the second begins, and whether the program says so. */
    withinDays: z.int(),
    isDaysByProgram: z.boolean(),
  }),
  run: (context, { limit }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const program = await programIn(reader, context.rules);
      const withinDays = reinspectionDays(program);
      const drawn = await reader.caseFiles('reinspection', ['drawn']);
      const signed = await reader.caseFiles('reinspection', ['signed']);
      const drawable = await drawableDevices(reader, withinDays, today);
      return {
        waiting: await waitingViews(reader, drawn.toReversed(), context.person, today),
        signed: await pairViews(reader, signed.slice(0, limit)),
        pairs: signed.length,
        drawable: drawable.length,
        withinDays,
        isDaysByProgram: program.reinspectionDays !== undefined,
      };
    }),
});
