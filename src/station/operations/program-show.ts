/** `program.show`: the employer's written rules that hold, who signed them and when, the earlier ones, and the presets. */
import { z } from 'zod';
import { standardIntervals, typeOfUseSource, typesOfUse } from '../../domain/due/type-of-use.ts';
import { evidenceKindSchema } from '../../domain/held/release-rules.ts';
import { sourceSchema } from '../../domain/procedure.ts';
import { programSchema, removalGroundSchema } from '../../domain/program.ts';
import { programAdoptionSchema } from '../../domain/program-adoption.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { namesOf } from '../views.ts';

/** `by` is a person's name. */
const adoptionSchema = programAdoptionSchema.extend({ byName: z.string() });

export const programShow = defineOperation({
  name: 'program.show',
  summary: "The employer's program that holds, the earlier ones, and the presets.",
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    program: programSchema,
    /** Absent while none was adopted and the one that the product ships holds. */
    adoption: adoptionSchema.optional(),
    /** Newest first, without the one in force. */
    earlier: z.array(adoptionSchema),
    presets: z.array(programSchema),
    /** Grounds for taking a device out of service that no program goes without. */
    groundsOfTrade: z.array(removalGroundSchema),
    /** What the trade asks for before a removed device comes back; a program asks for more, never for less. */
    release: z.object({
      kinds: z.array(evidenceKindSchema),
      rules: z.array(z.object({ key: z.string(), needs: z.array(z.array(z.string())) })),
    }),
    /** What the standard asks for each type of use, in months; a program chooses within the range. */
    standard: z.object({
      source: sourceSchema,
      intervals: z.array(
        z.object({
          typeOfUse: z.enum(typesOfUse),
          inspectionLeastMonths: z.int(),
          inspectionMostMonths: z.int(),
          revalidationMonths: z.int(),
        }),
      ),
    }),
  }),
  run: ({ ledger, rules }) =>
    ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const name = await namesOf(reader);
      const adoptions = (station.programs ?? []).map((each) => ({ ...each, byName: name(each.by) }));
      const adoption = adoptions.at(-1);
      return {
        program: programInForce(station, rules.shipped).program,
        ...(adoption === undefined ? {} : { adoption }),
        earlier: adoptions.slice(0, -1).toReversed(),
        presets: [...rules.presets],
        groundsOfTrade: rules.shipped.removalGrounds,
        release: {
          kinds: rules.release.kinds,
          rules: rules.release.rules.map(({ key, needs }) => ({ key, needs })),
        },
        standard: {
          source: typeOfUseSource,
          intervals: typesOfUse.map((typeOfUse) => {
            const { inspectionMonths, revalidationMonths } = standardIntervals[typeOfUse];
            const { least: inspectionLeastMonths, most: inspectionMostMonths } = inspectionMonths;
            return { typeOfUse, inspectionLeastMonths, inspectionMostMonths, revalidationMonths };
          }),
        },
      };
    }),
});
