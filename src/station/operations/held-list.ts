/** `held.list`: every device that is out of service, with its reasons, its place, what is missing and whose step is next. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { heldLine, heldLineSchema } from '../held-view.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { inForceIn } from '../program-in.ts';
import { hiddenInspection } from '../reinspections/blindness.ts';

export const heldList = defineOperation({
  name: 'held.list',
  summary: 'Every device that is held, with what is missing and whose step is next.',
  kind: 'query',
  access: everyRole,
  input: z.object({
    limit: z.int().min(1).max(500).default(100),
    offset: z.int().min(0).default(0),
  }),
  output: z.object({ held: z.array(heldLineSchema), total: z.int() }),
  run: (context, { limit, offset }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const { rows, total } = await reader.devices({
        standing: ['quarantined', 'at manufacturer'],
        limit,
        offset,
      });
      const { rules } = context;
      const place = {
        reader,
        rules,
        inForce: await inForceIn(reader, rules),
        today: context.occasion(station).on,
      };
      const held = [];
      for (const row of rows) {
        const line = await heldLine(row, place);
        const isHidden = (await hiddenInspection(reader, row.device, context)) !== undefined;
        held.push(isHidden ? { ...line, reasons: [] } : line);
      }
      return { held, total };
    }),
});
