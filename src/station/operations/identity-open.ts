/** `identity.open`: a device whose code and label cannot be read lies here; what was seen of it, and where it is kept. */
import { z } from 'zod';
import { decideOpenIdentity } from '../../domain/decide/identity.ts';
import { placeSchema } from '../../domain/identity/identity-case.ts';
import { observationSchema } from '../../domain/identity/observation.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { rankRegister } from '../identity-view.ts';
import { namedPersonFault } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { record } from '../record.ts';

export const identityOpen = defineOperation({
  name: 'identity.open',
  summary: 'Opens the case of a device whose code and label cannot be read.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    observation: observationSchema,
    /** The program's place for held devices where it is absent. */
    keptAt: placeSchema.optional(),
  }),
  output: z.object({ identityCase: z.int() }),
  run: async (context, { observation, keptAt }) => {
    const { person, rules, language } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const ranking = await context.ledger.read((reader) => rankRegister(reader, observation));
    let identityCase = 0;
    const result = await record(context, async (reader, occasion) => {
      const unknown = await namedPersonFault(reader, observation.lastUserId, 'observation.lastUserId');
      if (unknown !== undefined) return unknown;
      identityCase = await reader.nextIdentityCaseNumber();
      const place = keptAt ?? (await programIn(reader, rules)).quarantinePlace[language];
      return decideOpenIdentity({ identityCase, observation, ranking, keptAt: place }, person, occasion);
    });
    return isRefusal(result) ? result : { identityCase };
  },
});
