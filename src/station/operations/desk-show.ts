/** `desk.show`: what is asked at the desk, before use and at check-in. */
import { z } from 'zod';
import { deskRulesSchema } from '../../domain/custody/desk-rules.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const deskShow = defineOperation({
  name: 'desk.show',
  summary: 'What is asked at the desk, before use and at check-in.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({ rules: deskRulesSchema }),
  run: async ({ rules }) => ({ rules: rules.desk }),
});
