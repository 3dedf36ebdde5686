/** `inspection.answer`: the answer to one check; a later answer to the same check takes its place, and both are on record. */
import { z } from 'zod';
import { answerSchema } from '../../domain/answer.ts';
import { decideAnswer } from '../../domain/decide/inspection.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { caseIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';
import { showInspection } from '../show-inspection.ts';
import { inspectionViewSchema } from '../views.ts';

export const inspectionAnswer = defineOperation({
  name: 'inspection.answer',
  summary: 'Answers one check of an open inspection.',
  kind: 'command',
  access: everyRole,
  input: z.object({ inspection: z.int().positive(), check: z.string(), answer: answerSchema }),
  output: z.object({ inspection: inspectionViewSchema }),
  run: async (context, { inspection, check, answer }) => {
    const result = await record(context, async (reader) => {
      const open = await caseIn(reader, inspection, context.rules);
      return isRefusal(open) ? open : decideAnswer(open.inspection, open, check, answer);
    });
    return isRefusal(result) ? result : showInspection(context, inspection);
  },
});
