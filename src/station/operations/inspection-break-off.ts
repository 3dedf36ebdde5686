/** `inspection.break-off`: ends an inspection without a verdict; anything found until then keeps the device out of service. */
import { z } from 'zod';
import { decideBreakOff } from '../../domain/decide/inspection.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { caseIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const inspectionBreakOff = defineOperation({
  name: 'inspection.break-off',
  summary: 'Ends an inspection without a verdict.',
  kind: 'command',
  access: everyRole,
  input: z.object({ inspection: z.int().positive(), why: z.string().trim().min(1).max(300) }),
  output: z.object({ /** True where findings keep the device out of service now. */ removed: z.boolean() }),
  run: async (context, { inspection, why }) => {
    const result = await record(context, async (reader) => {
      const open = await caseIn(reader, inspection, context.rules);
      return isRefusal(open) ? open : decideBreakOff(open.inspection, open, why);
    });
    if (isRefusal(result)) return result;
    return { removed: result.some(({ event }) => event.type === 'device.removed') };
  },
});
