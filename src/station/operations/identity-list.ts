/** `identity.list`: the cases of "who is this?" that wait for a person, oldest first. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { identityCaseSchema } from '../../domain/identity/identity-case.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { namesOf } from '../views.ts';

export const identityList = defineOperation({
  name: 'identity.list',
  summary: 'The open cases of devices whose code and label cannot be read.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    cases: z.array(
      z.object({
        identityCase: z.int(),
        state: identityCaseSchema.shape.state,
        openedBy: z.string(),
        openedOn: calendarDateSchema,
        keptAt: z.string(),
      }),
    ),
  }),
  run: (context) =>
    context.ledger.read(async (reader) => {
      const name = await namesOf(reader);
      const open = await reader.openIdentityCases();
      return {
        cases: open.map(({ identityCase, state, openedBy, openedOn, keptAt }) => ({
          identityCase,
          state,
          openedBy: name(openedBy),
          openedOn,
          keptAt,
        })),
      };
    }),
});
