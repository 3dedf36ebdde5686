/** `tag.prove`: a printed tag was scanned on the device; only then is it recorded as applied. */
import { z } from 'zod';
import { yearOf } from '../../domain/calendar.ts';
import { decideProveTag } from '../../domain/decide/tag.ts';
import { judgeTag } from '../../domain/judge-tag.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { readScan } from '../../intake/read-scan.ts';
import { deviceIn, stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';
import { sealerOf } from '../seal.ts';

export const tagProve = defineOperation({
  name: 'tag.prove',
  summary: 'Records that a printed tag was scanned and reads.',
  kind: 'command',
  access: everyRole,
  /** The text of its QR symbol. */
  input: z.object({ text: z.string().max(200) }),
  output: z.object({ tagNumber: z.int() }),
  run: async (context, { text }) => {
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const scan = readScan(text, yearOf(context.now()));
    if (scan.kind !== 'tag') return refusal('tag-not-current', {}, 'text');
    const { tag } = scan;
    const sealer = await sealerOf(context.ledger, station);
    const result = await record(context, async (reader) => {
      const row = await deviceIn(reader, tag.benchId);
      if (isRefusal(row)) return row;
      const { state } = judgeTag(tag, sealer.mark, sealer.seal(tag).code, row.device);
      return state === 'current'
        ? decideProveTag(row.device, tag.tagNumber)
        : refusal('tag-not-current', {}, 'text');
    });
    return isRefusal(result) ? result : { tagNumber: tag.tagNumber };
  },
});
