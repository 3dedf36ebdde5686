/** `ledger.rebuild`: throws every projection away and fills it again from the events. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';

export const ledgerRebuild = defineOperation({
  name: 'ledger.rebuild',
  summary: 'Fills every projection again from the events.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({}),
  output: z.object({ events: z.int() }),
  run: async ({ ledger }) => ({ events: await ledger.rebuild() }),
});
