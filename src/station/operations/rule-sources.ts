/** `rule-sources.list`: what the rules of the product rest on, each source with how it is known. */
import { z } from 'zod';
import { messageSchema } from '../../domain/message.ts';
import { sourceSchema } from '../../domain/procedure.ts';
import { sourcesOfRules } from '../../domain/rule-sources.ts';
import { defineOperation } from '../operation.ts';

export const ruleSourcesList = defineOperation({
  name: 'rule-sources.list',
  summary:
    'What the checks, the programs, the desk and the release rules rest on, and how each source is known.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  output: z.object({
    /** Those that are quoted from memory first. */
    sources: z.array(
      z.object({
        ...sourceSchema.shape,
        of: z.array(messageSchema),
        rules: z.int().positive(),
      }),
    ),
  }),
  run: async ({ rules }) => ({
    sources: sourcesOfRules([rules.current.procedure, rules.presets, rules.desk, rules.release]).map(
      ({ of, ...source }) => ({ ...source, of: [...of] }),
    ),
  }),
});
