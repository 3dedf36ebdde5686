/** `identity.disagree`: a second person looked at the device and signs that it is another; the case is open again. */
import { z } from 'zod';
import { decideDisagree } from '../../domain/decide/identity.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { signedBySecond } from '../identity-signature.ts';
import { identityCaseIn } from '../identity-view.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const identityDisagree = defineOperation({
  name: 'identity.disagree',
  summary: 'A second person says that it is another device.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    identityCase: z.int().positive(),
    why: z.string().trim().max(200).default(''),
    pin: z.string().max(40),
  }),
  output: z.object({}),
  run: async (context, { identityCase, why, pin }) => {
    const second = await signedBySecond(context, identityCase, pin);
    if (isRefusal(second)) return second;
    const result = await record(context, async (reader, occasion) => {
      const identity = await identityCaseIn(reader, identityCase);
      return isRefusal(identity) ? identity : decideDisagree(identity, why, second, occasion);
    });
    return isRefusal(result) ? result : {};
  },
});
