/** `kit.remove`: a set of devices is no kit any more; the devices stay as they are. */
import { z } from 'zod';
import { decideRemoveKit } from '../../domain/decide/kit.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const kitRemove = defineOperation({
  name: 'kit.remove',
  summary: 'Takes a kit apart; its devices stay as they are.',
  kind: 'command',
  access: ['attendant', 'administrator'],
  input: z.object({ kitId: z.string() }),
  output: z.object({}),
  run: async (context, { kitId }) => {
    const result = await record(context, async (reader) =>
      decideRemoveKit(kitId, (await reader.station())?.kits ?? []),
    );
    return isRefusal(result) ? result : {};
  },
});
