/** `device.set-use`: a competent person determines how hard devices are used, several at once. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { decideSetUse } from '../../domain/decide/device-use.ts';
import { typeOfUseSchema } from '../../domain/due/type-of-use.ts';
import type { DomainEvent } from '../../domain/event.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';

export const deviceSetUse = defineOperation({
  name: 'device.set-use',
  summary: 'Determines the type of use of devices, as a competent person; all of them or none.',
  kind: 'command',
  access: everyRole,
  input: z.object({
    benchIds: z.array(benchIdSchema).min(1).max(500),
    typeOfUse: typeOfUseSchema,
    /** Today where it is absent. */
    from: calendarDateSchema.optional(),
  }),
  output: z.object({ changed: z.int() }),
  run: async (context, { benchIds, typeOfUse, from }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const result = await record(context, async (reader, { on }) => {
      const events: DomainEvent[] = [];
      for (const benchId of new Set(benchIds)) {
        const row = await deviceIn(reader, benchId);
        if (isRefusal(row)) return row;
        const decision = decideSetUse(row.device, { typeOfUse, from: from ?? on }, person, on);
        if (isRefusal(decision)) return decision;
        events.push(...decision);
      }
      return events;
    });
    return isRefusal(result) ? result : { changed: result.length };
  },
});
