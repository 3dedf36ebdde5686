/** `custody.check`: whether a device may go out, today, to a user where one is named; nothing is recorded. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { decideCheckOut, mayTakeOut } from '../../domain/decide/custody.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { inBothLanguages, refusedDeviceSchema } from '../custody-view.ts';
import { deviceIn, personIn, stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { deviceSummary, deviceSummarySchema, namesOf } from '../views.ts';

export const custodyCheck = defineOperation({
  name: 'custody.check',
  summary: 'Whether a device may go out to a user, and why not.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    benchId: benchIdSchema,
    userId: z.string(),
    expectedOn: calendarDateSchema.optional(),
  }),
  output: z.object({
    device: deviceSummarySchema,
    /** The name of whoever has it. */
    heldBy: z.string().optional(),
    refused: refusedDeviceSchema.optional(),
  }),
  run: (context, { benchId, userId, expectedOn }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const user = await personIn(reader, userId);
      if (isRefusal(user)) return user;
      const unfit = mayTakeOut(user);
      if (unfit !== undefined) return unfit;
      const today = context.occasion(station).on;
      const { custody } = row.device;
      const heldBy = custody && (await namesOf(reader))(custody.userId);
      const { key, version } = context.rules.desk;
      const preUse = { list: { key, version }, language: context.language };
      const decided = decideCheckOut(row.device, { user, today, expectedOn, preUse }, heldBy);
      const { dueSoonDays } = await programIn(reader, context.rules);
      return {
        device: deviceSummary(row, today, dueSoonDays),
        ...(heldBy === undefined ? {} : { heldBy }),
        ...(isRefusal(decided)
          ? { refused: { benchId, code: decided.code, sentence: inBothLanguages(decided) } }
          : {}),
      };
    }),
});
