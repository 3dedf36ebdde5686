/** `device.record-facts`: records when a device was bought and first put into use, as far as that is known. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideRecordFacts } from '../../domain/decide/equipment-facts.ts';
import { equipmentFactsSchema, knownDateSchema } from '../../domain/equipment-facts.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const deviceRecordFacts = defineOperation({
  name: 'device.record-facts',
  summary: 'Records when a device was bought and first put into use.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    /** Year, month or day; null where it is not known; as it is where it is absent. */
    purchasedOn: knownDateSchema.nullable().optional(),
    firstUsedOn: knownDateSchema.nullable().optional(),
  }),
  /** As they stand now. */
  output: equipmentFactsSchema,
  run: async (context, { benchId, ...change }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const result = await record(context, async (reader, { on }) => {
      const row = await deviceIn(reader, benchId);
      return isRefusal(row) ? row : decideRecordFacts(row.device, change, person, on);
    });
    if (isRefusal(result)) return result;
    const row = await context.ledger.read((reader) => deviceIn(reader, benchId));
    if (isRefusal(row)) return row;
    const { purchasedOn, firstUsedOn } = row.device;
    return {
      ...(purchasedOn === undefined ? {} : { purchasedOn }),
      ...(firstUsedOn === undefined ? {} : { firstUsedOn }),
    };
  },
});
