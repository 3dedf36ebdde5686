/** `printer.check`: asks a printer how it is, before it is saved or at any time after. */
import { z } from 'zod';
import { destinationSettingsSchema } from '../../printing/destination-settings.ts';
import { openDestination } from '../../printing/open-destination.ts';
import { defineOperation } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';

export const printerCheck = defineOperation({
  name: 'printer.check',
  summary: 'Asks a printer how it is.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ settings: destinationSettingsSchema }),
  output: z.object({
    condition: z.enum(['idle', 'processing', 'stopped', 'unknown']),
    makeAndModel: z.string().optional(),
    /** What stands in the way of a job now, in a sentence; absent where nothing is known to. */
    problem: z.string().optional(),
  }),
  run: async ({ language }, { settings }) => {
    const destination = await openDestination(settings);
    const { condition, makeAndModel, problem } = await destination.check();
    return {
      condition,
      ...(makeAndModel === undefined ? {} : { makeAndModel }),
      ...(problem === undefined ? {} : { problem: sentenceOf(problem, language) }),
    };
  },
});
