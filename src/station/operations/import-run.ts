/** `import.run`: takes a fleet list into the register, all of it or nothing. */
import { z } from 'zod';
import { columnChoiceSchema } from '../../domain/fleet-import/column-meaning.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { importRequestSchema } from '../exchange/import-request.ts';
import { defineOperation } from '../operation.ts';

export const importRun = defineOperation({
  name: 'import.run',
  summary: 'Takes a fleet list into the register, all of it or nothing.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  /** What each column means is said by a person: here nothing is proposed. */
  input: importRequestSchema.extend({ columns: z.array(columnChoiceSchema).min(1).max(1000) }),
  /** Ask `import.status` until the job has ended. */
  output: z.object({ job: z.int().positive() }),
  run: async (context, request) => ({
    job: context.importJobs.start(async (control) => {
      const { prepareImport } = await import('../exchange/prepare-import.ts');
      const { recordImport } = await import('../exchange/record-import.ts');
      const prepared = await prepareImport(context, request, { ...control, onProgress: () => undefined });
      if (isRefusal(prepared)) return prepared;
      const imported = await recordImport(context, prepared, control);
      return isRefusal(imported) ? imported : { kind: 'imported' as const, imported };
    }),
  }),
});
