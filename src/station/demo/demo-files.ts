/** The invented depot of `demo-data/`, as its files describe it. All days are counted back from the day of loading. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { answerSchema } from '../../domain/answer.ts';
import { benchIdSchema } from '../../domain/brand.ts';
import { kitSchema } from '../../domain/custody/kit.ts';
import { placeCodeSchema } from '../../domain/custody/place-code.ts';
import { typeOfUseSchema } from '../../domain/due/type-of-use.ts';
import { lengthUnitSchema } from '../../domain/length.ts';
import { languageSchema } from '../../domain/message.ts';
import { modelSheetSchema } from '../../domain/model-sheet.ts';
import { personSchema } from '../../domain/person.ts';
import { programSchema } from '../../domain/program.ts';
import { drawnFindingSchema } from './draw-finding.ts';

const demoPersonSchema = personSchema.omit({ designation: true }).extend({
  pin: z.string(),
  designation: z
    .object({
      designatedBy: z.string(),
      designatedDaysAgo: z.int(),
      /** Negative where the training has run out already. */
      trainingValidForDays: z.int(),
      trainedDaysAgo: z.int(),
      document: z.string(),
      trainingCourse: z.string(),
      /** Model sheets; every type where it is absent. */
      scope: z.array(z.string()).optional(),
    })
    .optional(),
  left: z.object({ daysAgo: z.int(), because: z.string() }).optional(),
});
export type DemoPerson = z.infer<typeof demoPersonSchema>;

const demoDeviceSchema = z.object({
  benchId: benchIdSchema,
  modelSheetId: z.string(),
  serial: z.string(),
  dateOfManufacture: z.string(),
  makerCode: z.string(),
  /** What was entered at registration instead, and corrected later. */
  misread: z
    .object({
      dateOfManufacture: z.string(),
      correctedDaysAgo: z.int(),
      correctedBy: z.string(),
      because: z.string(),
    })
    .optional(),
  registeredDaysAgo: z.int(),
  regularUserId: z.string().optional(),
  /** Signed inspections, oldest first; a check that `answers` does not name was found good. */
  history: z.array(
    z.object({
      daysAgo: z.int(),
      by: z.string(),
      answers: z.record(z.string(), answerSchema).optional(),
      /** Pictures that are drawn for it, by check. */
      pictures: z.record(z.string(), z.array(drawnFindingSchema)).default({}),
    }),
  ),
  /** As a competent person determined it when the second program was adopted. */
  typeOfUse: typeOfUseSchema.optional(),
  /** The certificate came with it on that day. */
  revalidated: z.object({ daysAgo: z.int(), by: z.string(), certificate: z.string() }).optional(),
  /** Its tag waits for its scan on the device. */
  tagNotScanned: z.boolean().default(false),
  /** Taken out of service without an inspection. */
  removed: z.object({ daysAgo: z.int(), by: z.string(), ground: z.string(), note: z.string() }).optional(),
  /** An inspection that was begun today and stands at this many answers. */
  open: z.object({ by: z.string(), answered: z.int() }).optional(),
});
export type DemoDevice = z.infer<typeof demoDeviceSchema>;

/** What a program of the depot says differently from the one that the product ships. */
const demoProgramSchema = programSchema
  .pick({
    key: true,
    title: true,
    inspectionInterval: true,
    employerRules: true,
    retentionYears: true,
  })
  .extend({ daysAgo: z.int(), by: z.string() });
export type DemoProgram = z.infer<typeof demoProgramSchema>;

const demoCustodySchema = z.object({
  /** Whoever stands at the desk. */
  by: z.string(),
  kits: z.array(kitSchema.extend({ savedDaysAgo: z.int() })),
  places: z.array(
    z.object({
      place: placeCodeSchema,
      benchIds: z.array(benchIdSchema),
      storedDaysAgo: z.int(),
      /** Its last count, with what was not there, and what lay there though it belongs elsewhere. */
      counted: z
        .object({
          daysAgo: z.int(),
          missing: z.array(benchIdSchema),
          strayed: z.array(benchIdSchema),
        })
        .optional(),
    }),
  ),
  /** What went out, oldest first. */
  out: z.array(
    z.object({
      userId: z.string(),
      language: languageSchema,
      benchIds: z.array(benchIdSchema),
      kitId: z.string().optional(),
      minutesAgo: z.int(),
      backAfterDays: z.int(),
      returnedMinutesAgo: z.int().optional(),
    }),
  ),
});
export type DemoCustody = z.infer<typeof demoCustodySchema>;

export interface DemoDepot {
  readonly station: { readonly name: string; readonly timeZone: string; readonly lengthUnit: 'm' | 'ft' };
  readonly people: readonly DemoPerson[];
  readonly modelSheets: readonly z.infer<typeof modelSheetSchema>[];
  readonly fleet: readonly DemoDevice[];
  /** In the order in which they were adopted. */
  readonly programs: readonly DemoProgram[];
  readonly custody: DemoCustody;
}

/** Throws where a file of the product itself is not valid. */
export const readDemoDepot = async (productFolder: string): Promise<DemoDepot> => {
  const read = async <Schema extends z.ZodType>(name: string, schema: Schema): Promise<z.output<Schema>> =>
    schema.parse(JSON.parse(await readFile(join(productFolder, 'demo-data', name), 'utf8')));
  return {
    station: await read(
      'station.json',
      z.object({ name: z.string(), timeZone: z.string(), lengthUnit: lengthUnitSchema }),
    ),
    people: await read('people.json', z.array(demoPersonSchema)),
    modelSheets: await read('model-sheets.json', z.array(modelSheetSchema)),
    fleet: await read('fleet.json', z.array(demoDeviceSchema)),
    custody: await read('custody.json', demoCustodySchema),
    programs: await read('programs.json', z.array(demoProgramSchema)),
  };
};
