/** `printer.list`: the print destinations of the station. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { printerViewSchema, printerViews } from '../printer-view.ts';

export const printerList = defineOperation({
  name: 'printer.list',
  summary: 'The print destinations of the station.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({ printers: z.array(printerViewSchema) }),
  run: async ({ ledger }) => {
    const station = await ledger.read(stationIn);
    return isRefusal(station) ? station : { printers: printerViews(station) };
  },
});
