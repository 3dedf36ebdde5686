/** `returns-basis.show`: what a plan of returns would be made of now, what is missing for it, and which held devices are no part of it. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { lengthPlanSchema, makerTermsSchema } from '../../domain/held/returns-basis.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { apartViewSchema, gapsView, missingViewSchema } from '../returns/plan-view.ts';
import { returnsNow } from '../returns/returns-now.ts';
import { ReturnsText } from '../returns/returns-text.ts';

export const returnsBasisShow = defineOperation({
  name: 'returns-basis.show',
  summary: 'What a plan of returns would be made of now, and what is missing for it.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({}),
  output: z.object({
    /** The first month of a plan is the month of this day. */
    from: calendarDateSchema,
    currency: z.string().optional(),
    months: z.int(),
    /** Of every device of the plan, and of every one whose terms were entered. */
    makers: z.array(
      z.object({
        manufacturer: z.string(),
        devices: z.int(),
        terms: makerTermsSchema.optional(),
      }),
    ),
    lengths: z.array(
      z.object({
        lengthM: z.number(),
        devices: z.int(),
        /** Now; those that are lost are none. */
        inService: z.int(),
        plan: lengthPlanSchema.optional(),
      }),
    ),
    /** Held devices that a plan is about. */
    devices: z.int(),
    missing: z.array(missingViewSchema),
    apart: z.array(apartViewSchema),
  }),
  run: async (context) => {
    const now = await returnsNow(context);
    if (isRefusal(now)) return now;
    const { station, gathered, recorded } = now;
    const { basis, inService, today } = gathered;
    const rows = [...recorded.rows.values()];
    const makers = new Set([
      ...rows.map(({ modelSheet }) => modelSheet.manufacturer),
      ...basis.makers.map(({ manufacturer }) => manufacturer),
    ]);
    const lengths = new Set([
      ...rows.map(({ modelSheet }): number => modelSheet.ratedLengthM),
      ...basis.lengths.map(({ lengthM }): number => lengthM),
    ]);
    const text = new ReturnsText({
      language: context.language,
      from: today,
      unit: station.lengthUnit,
      currency: basis.currency ?? '',
    });
    return {
      from: today,
      ...(basis.currency === undefined ? {} : { currency: basis.currency }),
      months: basis.months,
      makers: [...makers].sort().map((manufacturer) => {
        const terms = basis.makers.find((each) => each.manufacturer === manufacturer);
        return {
          manufacturer,
          devices: rows.filter(({ modelSheet }) => modelSheet.manufacturer === manufacturer).length,
          ...(terms === undefined ? {} : { terms }),
        };
      }),
      lengths: [...lengths]
        .sort((one, other) => one - other)
        .map((lengthM) => {
          const plan = basis.lengths.find((each) => each.lengthM === lengthM);
          return {
            lengthM,
            devices: rows.filter(({ modelSheet }) => modelSheet.ratedLengthM === lengthM).length,
            inService: inService.get(lengthM)?.length ?? 0,
            ...(plan === undefined ? {} : { plan }),
          };
        }),
      devices: rows.length,
      ...gapsView(recorded, text),
    };
  },
});
