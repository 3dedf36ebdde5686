/** `session.unattended`: how long this window still has before it is locked, by the clock of the station. Asking is no sign of anybody. */
import { z } from 'zod';
import { unattendedMs } from '../../domain/unattended.ts';
import { defineOperation } from '../operation.ts';

export const sessionUnattended = defineOperation({
  name: 'session.unattended',
  summary: 'How long this window still has before it is locked.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  output: z.object({
    isLocked: z.boolean(),
    /** Until it is locked, where nobody touches any window of the session. */
    secondsLeft: z.int().nonnegative(),
  }),
  run: async ({ ledger, session }) => {
    const station = await ledger.read((reader) => reader.station());
    const leftMs = unattendedMs(station) - session.idleMs();
    const isLocked = session.lockedFor !== undefined;
    return { isLocked, secondsLeft: isLocked ? 0 : Math.max(0, Math.ceil(leftMs / 1000)) };
  },
});
