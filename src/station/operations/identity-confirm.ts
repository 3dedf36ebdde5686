/** `identity.confirm`: a second person looked at the device, agrees, and signs with their PIN; then it is out of service. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideTakeIdentity } from '../../domain/decide/identity.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { foundSoFar } from '../found-so-far.ts';
import { signedBySecond } from '../identity-signature.ts';
import { identityCaseIn } from '../identity-view.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const identityConfirm = defineOperation({
  name: 'identity.confirm',
  summary: 'A second person agrees who the device is; it is taken out of service at once.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    identityCase: z.int().positive(),
    /** The device that the second person compared, so that nobody confirms what changed in the meantime. */
    candidate: benchIdSchema,
    lookedAtDevice: z.literal(true),
    pin: z.string().max(40),
  }),
  output: z.object({ benchId: benchIdSchema }),
  run: async (context, { identityCase, candidate, pin }) => {
    const second = await signedBySecond(context, identityCase, pin);
    if (isRefusal(second)) return second;
    const result = await record(context, async (reader, occasion) => {
      const identity = await identityCaseIn(reader, identityCase);
      if (isRefusal(identity)) return identity;
      if (identity.proposal !== undefined && identity.proposal.benchId !== candidate)
        return refusal('identity-not-a-candidate', { benchId: candidate, identityCase }, 'candidate');
      const row = await deviceIn(reader, candidate);
      if (isRefusal(row)) return row;
      const found = await foundSoFar(reader, row.device.openInspection, context.rules);
      return isRefusal(found) ? found : decideTakeIdentity(identity, row.device, found, second, occasion);
    });
    return isRefusal(result) ? result : { benchId: candidate };
  },
});
