/** `marking-request.list`: what is to be asked of each manufacturer: markings to replace, device by device. */
import { z } from 'zod';
import { markingRequestSchema, markingRequestsOf } from '../../domain/marking-request.ts';
import type { DeviceRow } from '../../ledger/ledger.ts';
import { defineOperation, everyRole } from '../operation.ts';

const pageSize = 500;

export const markingRequestList = defineOperation({
  name: 'marking-request.list',
  summary: 'The devices out of service for their marking, by manufacturer.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({ requests: z.array(markingRequestSchema) }),
  run: (context) =>
    context.ledger.read(async (reader) => {
      const held: DeviceRow[] = [];
      for (let offset = 0; ; offset += pageSize) {
        const { rows } = await reader.devices({ standing: ['quarantined'], limit: pageSize, offset });
        held.push(...rows);
        if (rows.length < pageSize) break;
      }
      return { requests: markingRequestsOf(held) };
    }),
});
