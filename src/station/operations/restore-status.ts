/** `restore.status`: what an opened backup is, and what restoring it would change. */
import { z } from 'zod';
import { calendarDateSchema, instantSchema } from '../../domain/brand.ts';
import { recordHeadSchema } from '../../domain/keeping.ts';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';
import { notCountedYet } from '../work-jobs.ts';

const beyondSchema = z.object({
  events: z.number().int(),
  signedInspections: z.number().int(),
  from: calendarDateSchema.optional(),
  to: calendarDateSchema.optional(),
});

export const restoreStatus = defineOperation({
  name: 'restore.status',
  summary: 'What an opened backup is, and what restoring it would change.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ job: z.number().int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Files of the backup; how many there are is not known. */
    z.object({ state: z.literal('working'), done: z.number().int(), of: z.number().int() }),
    z.object({
      state: z.literal('ready'),
      fileName: z.string(),
      stationName: z.string(),
      madeAt: instantSchema,
      record: recordHeadSchema,
      devices: z.number().int(),
      pictures: z.number().int(),
      picturesLost: z.number().int(),
      /** Absent where there is no record here. */
      comparison: z
        .object({
          here: recordHeadSchema,
          /** Events at the beginning of both that are the same. */
          same: z.number().int(),
          /** What is here and not in the backup: it would be set aside. */
          onlyHere: beyondSchema,
          onlyInBackup: beyondSchema,
        })
        .optional(),
    }),
    z.object({ state: z.literal('refused'), code: z.string(), sentence: z.string() }),
  ]),
  run: async ({ keeper, language }, { job }) => {
    const status = keeper.restores.stateOf(job);
    switch (status?.state) {
      case undefined:
        return refusal('restore-job-not-known', { job }, 'job');
      case 'working':
        return { state: status.state, ...(status.progress ?? notCountedYet) };
      case 'refused':
        return {
          state: status.state,
          code: status.refusal.code,
          sentence: sentenceOf(status.refusal, language),
        };
      case 'done': {
        const { fileName, station, madeAt, record, devices, pictures, picturesLost, comparison } =
          status.outcome;
        const known = {
          fileName,
          stationName: station.name,
          madeAt,
          record,
          devices,
          pictures,
          picturesLost,
        };
        if (comparison === undefined) return { state: 'ready' as const, ...known };
        const { here, same, first: onlyHere, second: onlyInBackup } = comparison;
        return { state: 'ready' as const, ...known, comparison: { here, same, onlyHere, onlyInBackup } };
      }
    }
  },
});
