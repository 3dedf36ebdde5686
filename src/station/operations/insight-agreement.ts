/** `insight.agreement`: how far inspectors agree beyond chance, by the pairs of blind inspections. */
import { z } from 'zod';
import { messageSchema } from '../../domain/message.ts';
import { fewPairs, inspectorAgreement } from '../../planning/insight/inspector-agreement.ts';
import { judgedPairs } from '../insight/judged-pairs.ts';
import { defineOperation, everyRole } from '../operation.ts';

const agreement = z.object({
  pairs: z.int(),
  /** The share on which both say the same, and the share on which they would by chance. */
  observed: z.number(),
  expected: z.number(),
  /** Cohen's kappa; absent where both always say the same one thing. */
  kappa: z.number().optional(),
  standardError: z.number().optional(),
  /** 95 % (Fleiss, Cohen and Everitt, 1969); absent where they never differ. */
  lower: z.number().optional(),
  upper: z.number().optional(),
});

export const insightAgreement = defineOperation({
  name: 'insight.agreement',
  summary: 'How far inspectors agree beyond chance, by the pairs of blind inspections.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    devices: z.int(),
    verdict: agreement,
    /** Too few pairs to say much, and how many are enough. */
    isFew: z.boolean(),
    fewPairs: z.int(),
    both: z.object({
      pass: z.int(),
      'differ, first removes': z.int(),
      'differ, second removes': z.int(),
      remove: z.int(),
    }),
    checks: z.array(z.object({ check: z.string(), title: messageSchema, agreement })),
    checksWithFew: z.int(),
  }),
  run: async ({ ledger, rules }) => {
    const pairs = await ledger.read(judgedPairs);
    const { checks, ...found } = inspectorAgreement(pairs);
    const titles = new Map(rules.current.procedure.checks.map(({ key, title }) => [key, title]));
    return {
      ...found,
      fewPairs,
      checks: checks.map((each) => ({
        ...each,
        title: titles.get(each.check) ?? { en: each.check, es: each.check },
      })),
    };
  },
});
