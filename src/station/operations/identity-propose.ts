/** `identity.propose`: a competent person says which device this is, and signs. The device that is proposed is not touched. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import type { Decision } from '../../domain/decide/decision.ts';
import { decideProposeIdentity } from '../../domain/decide/identity.ts';
import type { Occasion } from '../../domain/event.ts';
import type { IdentityCase } from '../../domain/identity/identity-case.ts';
import type { Person } from '../../domain/person.ts';
import { isRefusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { signedInCase } from '../identity-signature.ts';
import { identityCaseIn } from '../identity-view.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const identityPropose = defineOperation({
  name: 'identity.propose',
  summary: 'Proposes which device of the register this is.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    identityCase: z.int().positive(),
    candidate: benchIdSchema,
    pin: z.string().max(40),
  }),
  output: z.object({}),
  run: async (context, { identityCase, candidate, pin }) => {
    const decide = async (
      identity: IdentityCase,
      person: Person,
      occasion: Occasion,
      reader: LedgerReader,
    ): Promise<Decision> => {
      const row = await deviceIn(reader, candidate);
      return isRefusal(row) ? row : decideProposeIdentity(identity, row.device, person, occasion);
    };
    const proposer = await signedInCase(context, identityCase, pin, async (...state) => {
      const decision = await decide(...state);
      return isRefusal(decision) ? decision : undefined;
    });
    if (isRefusal(proposer)) return proposer;
    const result = await record(context, async (reader, occasion) => {
      const identity = await identityCaseIn(reader, identityCase);
      return isRefusal(identity) ? identity : decide(identity, proposer, occasion, reader);
    });
    return isRefusal(result) ? result : {};
  },
});
