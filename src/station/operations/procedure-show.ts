/** `procedure.show`: the checks of an inspection, in order, with every allowed answer; and the program's removal grounds. */
import { z } from 'zod';
import { procedureSchema } from '../../domain/procedure.ts';
import { programSchema } from '../../domain/program.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { caseIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { programIn } from '../program-in.ts';

export const procedureShow = defineOperation({
  name: 'procedure.show',
  summary: 'The checks of an inspection, in order, with every allowed answer.',
  kind: 'query',
  access: 'anyone',
  /** The procedure with which this inspection began; the current one where no inspection is named. */
  input: z.object({ inspection: z.int().positive().optional() }),
  output: z.object({ procedure: procedureSchema, program: programSchema }),
  run: ({ ledger, rules }, { inspection }) =>
    ledger.read(async (reader) => {
      const program = await programIn(reader, rules);
      if (inspection === undefined) return { procedure: rules.current.procedure, program };
      const open = await caseIn(reader, inspection, rules);
      return isRefusal(open) ? open : { procedure: open.procedure, program };
    }),
});
