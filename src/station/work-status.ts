/** How a long work stands, as every operation that is asked after one tells it. */
import { z } from 'zod';
import type { Language } from '../domain/message.ts';
import { type Refusal, type RefusalCode, refusal } from '../domain/refusal.ts';
import { sentenceOf } from './sentence.ts';
import { notCountedYet, type WorkJobs } from './work-jobs.ts';

/** What is counted is for the operation to say; `of` is 0 while it is not known yet. */
export const workingSchema = z.object({
  state: z.literal('working'),
  done: z.int(),
  of: z.int(),
});

export const refusedSchema = z.object({
  state: z.literal('refused'),
  code: z.string(),
  sentence: z.string(),
  field: z.string().optional(),
});

/** Refuses with `unknown` where no job has that number; `done` says what a work that succeeded has brought. */
export const workStatus = <Outcome extends object, Done>(
  jobs: WorkJobs<Outcome>,
  job: number,
  language: Language,
  unknown: RefusalCode,
  done: (outcome: Outcome) => Done,
): z.input<typeof workingSchema> | z.input<typeof refusedSchema> | Done | Refusal => {
  const status = jobs.stateOf(job);
  switch (status?.state) {
    case undefined:
      return refusal(unknown, { job }, 'job');
    case 'working':
      return { state: status.state, ...(status.progress ?? notCountedYet) };
    case 'refused': {
      const { code, field } = status.refusal;
      const sentence = sentenceOf(status.refusal, language);
      return { state: status.state, code, sentence, ...(field === undefined ? {} : { field }) };
    }
    case 'done':
      return done(status.outcome);
  }
};
