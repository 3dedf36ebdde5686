/** `device.register`: enters a device with its marking, element by element, under a new or a pre-printed bench ID. */
import { z } from 'zod';
import { parseBenchId } from '../../domain/bench-id/bench-id.ts';
import { type BenchId, benchIdSchema } from '../../domain/brand.ts';
import { yearOf } from '../../domain/calendar.ts';
import { decideRegister } from '../../domain/decide/device.ts';
import { otherCodeSchema } from '../../domain/device.ts';
import { markingEntrySchema } from '../../domain/marking.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { boundCodes, contradiction } from '../bound-code.ts';
import { clashesOf } from '../clashes.ts';
import { freeBenchId } from '../free-bench-id.ts';
import { namedPersonFault } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const deviceRegister = defineOperation({
  name: 'device.register',
  summary: 'Enters a device with its marking under a new or a pre-printed bench ID.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    /** The bench ID of a label that is on the device already; a new one is made where it is absent. */
    benchId: z.string().trim().max(40).optional(),
    modelSheetId: z.string(),
    /** Empty where the serial number cannot be read. */
    serial: z.string().trim().max(80),
    /** As it stands on the device, year or month or day; empty where it cannot be read. */
    dateOfManufacture: z.string().trim().max(40),
    marking: z.array(markingEntrySchema).max(20),
    otherCodes: z.array(otherCodeSchema).max(10).default([]),
    regularUserId: z.string().optional(),
  }),
  output: z.object({ benchId: benchIdSchema }),
  run: async (context, { benchId: printed, ...registration }) => {
    const parsed = printed === undefined ? undefined : parseBenchId(printed);
    if (parsed !== undefined && parsed.kind !== 'exact') {
      return refusal('bench-id-not-exact', { text: printed ?? '' }, 'benchId');
    }
    const codes = boundCodes(registration.otherCodes, yearOf(context.now()), 'otherCodes');
    if (isRefusal(codes)) return codes;
    const bound = { ...registration, otherCodes: codes.map(({ otherCode }) => otherCode) };
    let benchId: BenchId | undefined;
    const result = await record(context, async (reader) => {
      const chosen = parsed?.id ?? (await freeBenchId(reader, context.randomBytes));
      benchId = chosen;
      const unknown = await namedPersonFault(reader, bound.regularUserId, 'regularUserId');
      if (unknown !== undefined) return unknown;
      const sheet = await reader.modelSheet(bound.modelSheetId);
      for (const code of codes) {
        const fault = contradiction(code, bound.serial, sheet, 'otherCodes');
        if (fault !== undefined) return fault;
      }
      return decideRegister(chosen, bound, await clashesOf(reader, chosen, bound, codes));
    });
    if (isRefusal(result)) return result;
    return benchId === undefined ? refusal('internal-error') : { benchId };
  },
});
