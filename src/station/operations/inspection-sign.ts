/** `inspection.sign`: the competent person signs the verdict with their PIN; only then does the device change its standing. */
import { z } from 'zod';
import { decideSign, unfitToSign } from '../../domain/decide/inspection.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { caseIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';
import { showInspection } from '../show-inspection.ts';
import { inspectionViewSchema } from '../views.ts';

export const inspectionSign = defineOperation({
  name: 'inspection.sign',
  summary: 'Signs the verdict of a finished inspection.',
  kind: 'command',
  access: everyRole,
  input: z.object({ inspection: z.int().positive(), pin: z.string().max(40) }),
  output: z.object({ inspection: inspectionViewSchema }),
  run: async (context, { inspection, pin }) => {
    const signer = context.person;
    if (signer === undefined) return refusal('sign-in-needed');
    const open = await context.ledger.read((reader) => caseIn(reader, inspection, context.rules));
    if (isRefusal(open)) return open;
    const unfit = unfitToSign(signer, open.device, context.occasion(open.station));
    if (unfit !== undefined) return unfit;
    const wrongPin = await context.pins.check(signer, pin, context.now());
    if (wrongPin !== undefined) return wrongPin;
    const result = await record(context, async (reader, occasion) => {
      const now = await caseIn(reader, inspection, context.rules);
      return isRefusal(now) ? now : decideSign(now.inspection, now, signer, occasion);
    });
    return isRefusal(result) ? result : showInspection(context, inspection);
  },
});
