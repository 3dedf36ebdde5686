/** `session.attend`: somebody touched this window just now. What a window asks by itself is no sign of anybody. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';

export const sessionAttend = defineOperation({
  name: 'session.attend',
  summary: 'Somebody touched this window just now, so it is not locked for a while.',
  kind: 'command',
  access: 'anyone',
  input: z.object({}),
  output: z.object({}),
  run: async ({ session }) => {
    session.attend();
    return {};
  },
});
