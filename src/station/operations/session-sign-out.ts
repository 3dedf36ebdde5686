/** `session.sign-out`: nobody works at this window any more. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';

export const sessionSignOut = defineOperation({
  name: 'session.sign-out',
  summary: 'Nobody works at this window any more.',
  kind: 'command',
  access: 'anyone',
  input: z.object({}),
  output: z.object({}),
  run: async (context) => {
    context.session.signOut();
    return {};
  },
});
