/** `device.relabel`: the manufacturer's marking is read, element by element, before a label of ours is printed once more. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideRelabel } from '../../domain/decide/relabel.ts';
import { markingEntrySchema } from '../../domain/marking.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { reprintReasonSchema } from '../../domain/tag-content.ts';
import { reasonSchema } from '../../domain/verdict.ts';
import { foundSoFar } from '../found-so-far.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const deviceRelabel = defineOperation({
  name: 'device.relabel',
  summary: 'Reads the whole marking before a label of ours is printed once more.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    marking: z.array(markingEntrySchema).max(20),
    reprintBecause: reprintReasonSchema,
  }),
  output: z.discriminatedUnion('outcome', [
    z.object({ outcome: z.literal('may be printed') }),
    /** Out of service, and on the request list to the manufacturer. */
    z.object({ outcome: z.literal('removed'), reasons: z.array(reasonSchema).min(1) }),
  ]),
  run: async (context, { benchId, ...reading }) => {
    const { person, rules } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const result = await record(context, async (reader, occasion) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const found = await foundSoFar(reader, row.device.openInspection, rules);
      if (isRefusal(found)) return found;
      return decideRelabel(row.device, reading, rules.current.procedure, found, person, occasion);
    });
    if (isRefusal(result)) return result;
    const reasons = result.flatMap(({ event }) => (event.type === 'device.removed' ? event.reasons : []));
    return reasons.length === 0
      ? { outcome: 'may be printed' as const }
      : { outcome: 'removed' as const, reasons };
  },
});
