/** `station.set-unattended`: after how many minutes a window that nobody touches is locked. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { unattendedMinutesSchema } from '../../domain/unattended.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const stationSetUnattended = defineOperation({
  name: 'station.set-unattended',
  summary: 'Sets after how many minutes a window that nobody touches is locked.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({ minutes: unattendedMinutesSchema }),
  output: z.object({}),
  run: async (context, { minutes }) => {
    const result = await record(context, async () => [{ type: 'station.unattended-set', minutes }]);
    return isRefusal(result) ? result : {};
  },
});
