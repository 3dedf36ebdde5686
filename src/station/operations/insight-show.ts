/** `insight.show`: what the removals of the depot say: by part, by model, length, age and use, and how long devices last. */
import { z } from 'zod';
import { zoneSchema } from '../../domain/procedure.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { dimensions, fewDevices, groupsBy, survivalOf } from '../../planning/insight/removal-insight.ts';
import { deviceLives } from '../insight/device-lives.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';

const proportion = z.object({
  count: z.int(),
  of: z.int(),
  share: z.number(),
  lower: z.number(),
  upper: z.number(),
});

const group = z.object({
  /** The model, the length in metres, the first year of the age class, or the type of use; `unknown`, or `all`. */
  value: z.string(),
  devices: z.int(),
  /** Ever removed, with the 95 % score interval (Wilson). */
  removed: proportion,
  /** By the part of the device, the most frequent first. */
  reasons: z.array(z.object({ key: zoneSchema, count: z.int(), share: z.number(), cumulative: z.number() })),
  reasonCount: z.int(),
  /** Too few devices to say much. */
  isFew: z.boolean(),
});

const survival = z.object({
  /** Kaplan–Meier, in days since the first pass here, with the 95 % band on the log-log scale. */
  steps: z.array(
    z.object({
      time: z.number(),
      atRisk: z.int(),
      removed: z.int(),
      survival: z.number(),
      standardError: z.number(),
      lower: z.number(),
      upper: z.number(),
    }),
  ),
  devices: z.int(),
  removed: z.int(),
  longest: z.number(),
  median: z.number().optional(),
});

export const insightShow = defineOperation({
  name: 'insight.show',
  summary: 'What the removals of the depot say: which parts, which devices, and how long they last.',
  kind: 'query',
  access: everyRole,
  input: z.object({ by: z.enum(['all', ...dimensions]).default('all') }),
  output: z.object({
    groups: z.array(group),
    survival,
    /** Fewer devices than this are too few. */
    fewDevices: z.int(),
  }),
  run: async (context, { by }) => {
    const found = await context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      return isRefusal(station) ? station : { station, lives: await deviceLives(reader) };
    });
    if (isRefusal(found)) return found;
    const { on } = context.occasion(found.station);
    const groups = groupsBy(found.lives, by, on).map((each) => ({ ...each, reasons: [...each.reasons] }));
    const { steps, ...counted } = survivalOf(found.lives, on);
    return { groups, survival: { ...counted, steps: [...steps] }, fewDevices };
  },
});
