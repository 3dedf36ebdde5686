/** `returns-basis.record`: records what a manufacturer asks, what the depot needs of a length, or what is planned in. */
import { z } from 'zod';
import { decideReturnsBasis } from '../../domain/decide/held/returns-basis.ts';
import { returnsBasisKey } from '../../domain/held/case-file.ts';
import {
  emptyReturnsBasis,
  returnsBasisChangeSchema,
  returnsBasisSchema,
} from '../../domain/held/returns-basis.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const returnsBasisRecord = defineOperation({
  name: 'returns-basis.record',
  summary:
    'Records what returns are planned with: costs of a manufacturer, needs and prices of a length, the currency.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ change: returnsBasisChangeSchema }),
  output: z.object({}),
  run: async (context, { change }) => {
    const result = await record(context, async (reader) => {
      const known = await reader.caseFile(returnsBasisKey);
      return decideReturnsBasis(
        known?.kind === 'returns basis' ? returnsBasisSchema.parse(known) : emptyReturnsBasis,
        change,
      );
    });
    return isRefusal(result) ? result : {};
  },
});
