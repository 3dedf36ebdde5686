/** `notice.record`: a manufacturer's notice, signed with a PIN; what it means is held at once, wherever it is. */
import { z } from 'zod';
import { decideNotice } from '../../domain/decide/notice.ts';
import { noticeTextSchema } from '../../domain/recall/notice.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { recalledBy } from '../recall/recalled-devices.ts';
import { record } from '../record.ts';

export const noticeRecord = defineOperation({
  name: 'notice.record',
  summary: 'Records a manufacturer’s notice and holds every device that it means, signed with a PIN.',
  kind: 'command',
  access: ['inspector', 'administrator'],
  input: z.object({ text: noticeTextSchema, pin: z.string().max(40) }),
  output: z.object({
    notice: z.number().int(),
    /** Devices that were held for it. */
    held: z.number().int(),
  }),
  run: async (context, { text, pin }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const wrongPin = await context.pins.check(person, pin, context.now());
    if (wrongPin !== undefined) return wrongPin;
    const result = await record(context, async (reader, occasion) => {
      const known = await reader.notices();
      const recalled = await recalledBy(reader, text, context.rules);
      if (isRefusal(recalled)) return recalled;
      const notice = (known[0]?.notice ?? 0) + 1;
      return decideNotice({ notice, text }, known, recalled, person, occasion);
    });
    if (isRefusal(result)) return result;
    const [recorded, ...others] = result.map(({ event }) => event);
    if (recorded?.type !== 'notice.recorded') throw new Error('A notice is recorded before what it holds.');
    return {
      notice: recorded.notice,
      held: others.filter(({ type }) => type === 'device.removed').length,
    };
  },
});
