/** `fall-case.close`: somebody else than who opened the case closes it with what the investigation found. */
import { z } from 'zod';
import { decideCloseFallCase } from '../../domain/decide/held/fall-case.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { fallCaseIn } from '../case-file-in.ts';
import { fallCaseViewSchema } from '../held-view.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { showFallCase } from '../show-fall-case.ts';

export const fallCaseClose = defineOperation({
  name: 'fall-case.close',
  summary: 'Closes a fall case with its findings, by another person than who opened it.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({
    fallCase: z.int().positive(),
    findings: z.string().trim().max(4000),
  }),
  output: z.object({ fallCase: fallCaseViewSchema }),
  run: async (context, { fallCase, findings }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const result = await record(context, async (reader, occasion) => {
      const file = await fallCaseIn(reader, fallCase);
      return isRefusal(file) ? file : decideCloseFallCase(file, findings, person, occasion);
    });
    return isRefusal(result) ? result : showFallCase(context, fallCase);
  },
});
