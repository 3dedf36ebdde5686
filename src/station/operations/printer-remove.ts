/** `printer.remove`: takes a print destination off the list. */
import { z } from 'zod';
import { decideRemovePrinter } from '../../domain/decide/printer.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const printerRemove = defineOperation({
  name: 'printer.remove',
  summary: 'Takes a print destination off the list.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({ printerId: z.string() }),
  output: z.object({}),
  run: async (context, { printerId }) => {
    const result = await record(context, async (reader) => {
      const station = await stationIn(reader);
      return isRefusal(station) ? station : decideRemovePrinter(station, printerId);
    });
    return isRefusal(result) ? result : {};
  },
});
