/** `import.status`: how a preview or an import stands. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { importPreview, importPreviewSchema } from '../exchange/import-preview-view.ts';
import { defineOperation } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';
import { notCountedYet } from '../work-jobs.ts';

export const importStatus = defineOperation({
  name: 'import.status',
  summary: 'How a preview or an import stands.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: z.object({ job: z.number().int().positive() }),
  output: z.discriminatedUnion('state', [
    /** `of` is 0 while it is not known yet. */
    z.object({ state: z.literal('working'), done: z.number().int(), of: z.number().int() }),
    z.object({ state: z.literal('previewed'), preview: importPreviewSchema }),
    z.object({
      state: z.literal('imported'),
      fileName: z.string(),
      sha256: z.string(),
      devices: z.number().int(),
      modelSheets: z.number().int(),
      inspections: z.number().int(),
      removed: z.number().int(),
      events: z.number().int(),
    }),
    z.object({
      state: z.literal('refused'),
      code: z.string(),
      sentence: z.string(),
      field: z.string().optional(),
    }),
  ]),
  run: async ({ importJobs, language }, { job }) => {
    const status = importJobs.stateOf(job);
    switch (status?.state) {
      case undefined:
        return refusal('import-job-not-known', { job }, 'job');
      case 'working':
        return { state: status.state, ...(status.progress ?? notCountedYet) };
      case 'refused': {
        const { code, field } = status.refusal;
        const sentence = sentenceOf(status.refusal, language);
        return { state: status.state, code, sentence, ...(field === undefined ? {} : { field }) };
      }
      case 'done':
        return status.outcome.kind === 'previewed'
          ? { state: 'previewed' as const, preview: importPreview(status.outcome.prepared, language) }
          : { state: 'imported' as const, ...status.outcome.imported };
    }
  },
});
