/** `device.show`: everything that the register knows of one device. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn, stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { blindCard } from '../reinspections/blind-card.ts';
import { hiddenInspection } from '../reinspections/blindness.ts';
import { deviceCard, deviceCardSchema } from '../views.ts';

export const deviceShow = defineOperation({
  name: 'device.show',
  summary: 'Everything that the register knows of one device.',
  kind: 'query',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema }),
  output: z.object({ device: deviceCardSchema }),
  run: (context, { benchId }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const today = context.occasion(station).on;
      const card = await deviceCard(reader, row, today, programInForce(station, context.rules.shipped));
      return { device: blindCard(card, await hiddenInspection(reader, row.device, context)) };
    }),
});
