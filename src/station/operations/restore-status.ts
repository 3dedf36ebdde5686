/** `restore.status`: what an opened backup is, and what restoring it would change. */
import { z } from 'zod';
import { calendarDateSchema, instantSchema } from '../../domain/brand.ts';
import { recordHeadSchema } from '../../domain/keeping.ts';
import { defineOperation } from '../operation.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

const beyondSchema = z.object({
  events: z.int(),
  signedInspections: z.int(),
  from: calendarDateSchema.optional(),
  to: calendarDateSchema.optional(),
});

export const restoreStatus = defineOperation({
  name: 'restore.status',
  summary: 'What an opened backup is, and what restoring it would change.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Files of the backup; how many there are is not known. */
    workingSchema,
    z.object({
      state: z.literal('ready'),
      fileName: z.string(),
      stationName: z.string(),
      madeAt: instantSchema,
      record: recordHeadSchema,
      devices: z.int(),
      pictures: z.int(),
      picturesLost: z.int(),
      /** Absent where there is no record here. */
      comparison: z
        .object({
          here: recordHeadSchema,
          /** Events at the beginning of both that are the same. */
          same: z.int(),
          /** What is here and not in the backup: it would be set aside. */
          onlyHere: beyondSchema,
          onlyInBackup: beyondSchema,
        })
        .optional(),
    }),
    refusedSchema,
  ]),
  run: async ({ keeper, language }, { job }) =>
    workStatus(
      keeper.restores,
      job,
      language,
      'restore-job-not-known',
      ({ station, comparison, prepared: _prepared, ...backup }) => {
        const known = { state: 'ready' as const, ...backup, stationName: station.name };
        if (comparison === undefined) return known;
        const { here, same, first: onlyHere, second: onlyInBackup } = comparison;
        return { ...known, comparison: { here, same, onlyHere, onlyInBackup } };
      },
    ),
});
