/** `identity.propose`: a competent person says which device this is. The device that is proposed is not touched. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideProposeIdentity } from '../../domain/decide/identity.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { identityCaseIn } from '../identity-view.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const identityPropose = defineOperation({
  name: 'identity.propose',
  summary: 'Proposes which device of the register this is.',
  kind: 'command',
  access: everyRole,
  input: z.object({ identityCase: z.number().int().positive(), candidate: benchIdSchema }),
  output: z.object({}),
  run: async (context, { identityCase, candidate }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const result = await record(context, async (reader, occasion) => {
      const identity = await identityCaseIn(reader, identityCase);
      if (isRefusal(identity)) return identity;
      const row = await deviceIn(reader, candidate);
      return isRefusal(row) ? row : decideProposeIdentity(identity, row.device, person, occasion);
    });
    return isRefusal(result) ? result : {};
  },
});
