/** `import.preview`: reads a fleet list and says everything that speaks against importing it; nothing is recorded. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { importRequestSchema } from '../exchange/import-request.ts';
import { defineOperation } from '../operation.ts';

export const importPreviewOperation = defineOperation({
  name: 'import.preview',
  summary: 'Reads a fleet list and says everything that speaks against importing it.',
  kind: 'query',
  access: ['inspector', 'administrator'],
  input: importRequestSchema,
  /** Ask `import.status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context, request) => ({
    job: context.importJobs.start(async (control) => {
      const { prepareImport } = await import('../exchange/prepare-import.ts');
      const prepared = await prepareImport(context, request, control);
      return isRefusal(prepared) ? prepared : { kind: 'previewed' as const, prepared };
    }),
  }),
});
