/** `record.size`: how many events are recorded, so that a window sees when another one has changed something, or that it is locked. */
import { z } from 'zod';
import { defineOperation } from '../operation.ts';

export const recordSize = defineOperation({
  name: 'record.size',
  summary: 'How many events are recorded.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  output: z.object({
    events: z.int(),
    /** The window is locked until a badge is scanned. */
    isLocked: z.literal(true).optional(),
  }),
  run: ({ ledger, session }) =>
    ledger.read(async (reader) => ({
      events: await reader.size(),
      ...(session.lockedFor === undefined ? {} : { isLocked: true as const }),
    })),
});
