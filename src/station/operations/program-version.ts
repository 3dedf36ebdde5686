/** `program.version`: the whole of a program that was adopted once, by the number of its event. */
import { z } from 'zod';
import { programSchema } from '../../domain/program.ts';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const programVersion = defineOperation({
  name: 'program.version',
  summary: 'The whole of a program that was adopted once.',
  kind: 'query',
  access: everyRole,
  input: z.object({ seq: z.int().positive() }),
  output: z.object({ program: programSchema }),
  run: ({ ledger }, { seq }) =>
    ledger.read(async (reader) => {
      const recorded = await reader.event(seq);
      return recorded?.event.type === 'program.adopted'
        ? { program: recorded.event.program }
        : refusal('program-version-unknown', { seq }, 'seq');
    }),
});
