/** `identity.show`: one case of "who is this?", its candidates as the register has them now. */
import { z } from 'zod';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { identityCaseIn, identityCaseView, identityCaseViewSchema } from '../identity-view.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const identityShow = defineOperation({
  name: 'identity.show',
  summary: 'One case of a device whose code and label cannot be read.',
  kind: 'query',
  access: everyRole,
  input: z.object({ identityCase: z.int().positive() }),
  output: z.object({ identity: identityCaseViewSchema }),
  run: (context, { identityCase }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const identity = await identityCaseIn(reader, identityCase);
      if (isRefusal(identity)) return identity;
      const today = context.occasion(station).on;
      return {
        identity: await identityCaseView(
          reader,
          identity,
          today,
          programInForce(station, context.rules.shipped).program.dueSoonDays,
        ),
      };
    }),
});
