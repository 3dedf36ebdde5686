/** `due.list`: what is due until a day, the earliest first, with the rule that gave each date. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { addDays } from '../../domain/calendar.ts';
import { dueDateSchema } from '../../domain/due/due-date.ts';
import { dueDatesOf } from '../../domain/due/due-dates.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal } from '../../domain/refusal.ts';
import type { DeviceRow } from '../../ledger/ledger.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { deviceSummary, deviceSummarySchema } from '../views.ts';

const devicesAtOnce = 500;

export const dueList = defineOperation({
  name: 'due.list',
  summary: 'What is due until a day, the earliest first, with the rule that gave each date.',
  kind: 'query',
  access: everyRole,
  input: z.object({ until: calendarDateSchema, limit: z.int().min(1).max(5000).default(1000) }),
  output: z.object({
    devices: z.array(z.object({ device: deviceSummarySchema, due: z.array(dueDateSchema).min(1) })),
    total: z.int(),
    /** Not yet in use: nothing is due of them before their first inspection. */
    neverInspected: z.int(),
  }),
  run: (context, { until, limit }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const { program } = programInForce(station, context.rules.shipped);
      const query = { dueBefore: addDays(until, 1) };
      const rows: DeviceRow[] = [];
      for (let total = 1; rows.length < total; ) {
        const page = await reader.devices({ ...query, limit: devicesAtOnce, offset: rows.length });
        if (page.rows.length === 0) break;
        rows.push(...page.rows);
        total = page.total;
      }
      const { neverInspected } = await reader.counts(today, today);
      return {
        devices: rows
          .toSorted((one, other) => (one.device.dueOn ?? '').localeCompare(other.device.dueOn ?? ''))
          .slice(0, limit)
          .map((row) => ({
            device: deviceSummary(row, today, program.dueSoonDays),
            due: [...dueDatesOf(row.device, row.modelSheet, program)],
          })),
        total: rows.length,
        neverInspected,
      };
    }),
});
