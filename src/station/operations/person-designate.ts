/** `person.designate`: the employer's written designation of a competent person: its document, the training behind it, and its scope. */
import { z } from 'zod';
import { decideDesignate } from '../../domain/decide/designation.ts';
import { designationSchema } from '../../domain/person.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { record } from '../record.ts';

export const personDesignate = defineOperation({
  name: 'person.designate',
  summary: "Records the employer's written designation of a competent person.",
  kind: 'command',
  access: ['administrator'],
  input: z.object({ personId: z.string(), designation: designationSchema }),
  output: z.object({}),
  run: async (context, { personId, designation }) => {
    const result = await record(context, async (reader, { on }) => {
      const person = await personIn(reader, personId);
      if (isRefusal(person)) return person;
      const { trainingValidityMonths } = await programIn(reader, context.rules);
      return decideDesignate(person, designation, on, await reader.modelSheets(), trainingValidityMonths);
    });
    return isRefusal(result) ? result : {};
  },
});
