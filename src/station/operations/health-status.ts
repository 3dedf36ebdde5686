/** `health.status`: how far the look over the station is, and what was found. */
import { z } from 'zod';
import {
  type HealthKey,
  healthStateSchema,
  healthSubjectSchema,
  healthValueSchema,
} from '../../domain/health/finding.ts';
import { wordFindingIn } from '../health/health-words.ts';
import { defineOperation } from '../operation.ts';
import { refusedSchema, workingSchema, workStatus } from '../work-status.ts';

const findingSchema = z.object({
  subject: healthSubjectSchema,
  state: healthStateSchema,
  /** The key of its sentence, the same in every language. */
  says: z.custom<HealthKey>((key) => typeof key === 'string'),
  values: z.record(z.string(), healthValueSchema),
  found: z.string(),
  todo: z.string().optional(),
});

export const healthStatus = defineOperation({
  name: 'health.status',
  summary: 'How far the look over the station is, and what was found.',
  kind: 'query',
  access: 'anyone',
  input: z.object({ job: z.int().positive() }),
  output: z.discriminatedUnion('state', [
    /** Subjects. */
    workingSchema,
    z.object({
      state: z.literal('examined'),
      /** The gravest first. */
      findings: z.array(findingSchema),
    }),
    refusedSchema,
  ]),
  run: async ({ healthJobs, language }, { job }) =>
    workStatus(healthJobs, job, language, 'health-job-not-known', ({ findings }) => ({
      state: 'examined' as const,
      findings: findings.map(wordFindingIn(language)),
    })),
});
