/** `identity.leave-unidentified`: it is none of these; the device stays where it is kept, out of service. */
import { z } from 'zod';
import { decideLeaveUnidentified } from '../../domain/decide/identity.ts';
import { placeSchema } from '../../domain/identity/identity-case.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { identityCaseIn } from '../identity-view.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const identityLeaveUnidentified = defineOperation({
  name: 'identity.leave-unidentified',
  summary: 'Closes the case: the device is none of these.',
  kind: 'command',
  access: everyRole,
  input: z.object({ identityCase: z.int().positive(), keptAt: placeSchema.optional() }),
  output: z.object({}),
  run: async (context, { identityCase, keptAt }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const result = await record(context, async (reader, occasion) => {
      const identity = await identityCaseIn(reader, identityCase);
      return isRefusal(identity)
        ? identity
        : decideLeaveUnidentified(identity, keptAt ?? identity.keptAt, person, occasion);
    });
    return isRefusal(result) ? result : {};
  },
});
