/** `reinspection.see`: somebody is shown what the first inspection found, and so cannot make the blind second one any more. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideSee } from '../../domain/decide/reinspection.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const reinspectionSee = defineOperation({
  name: 'reinspection.see',
  summary: 'Shows what the first inspection found to somebody who will not make the blind second one.',
  kind: 'command',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema }),
  output: z.object({}),
  run: async (context, { benchId }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const result = await record(context, async (reader, { on }) => {
      const row = await deviceIn(reader, benchId);
      return isRefusal(row) ? row : decideSee(row.device, person, on);
    });
    return isRefusal(result) ? result : {};
  },
});
