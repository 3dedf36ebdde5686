/** `scanner.forget`: takes scans again as those of any scanner. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const scannerForget = defineOperation({
  name: 'scanner.forget',
  summary: 'Forgets what was learnt of the scanner.',
  kind: 'command',
  access: everyRole,
  input: z.object({}),
  output: z.object({}),
  run: async (context) => {
    const result = await record(context, async () => [{ type: 'scanner.learnt' }]);
    return isRefusal(result) ? result : {};
  },
});
