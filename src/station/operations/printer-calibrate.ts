/** `printer.calibrate`: the offset of a printer from what a person read off its printed calibration pattern. */
import { z } from 'zod';
import { decideSavePrinter } from '../../domain/decide/printer.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { offsetFromCross, offsetFromRulers } from '../../printing/calibration/offset.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { asRecord, printerIn } from '../printer-view.ts';
import { record } from '../record.ts';

const reading = z.number().min(-20).max(420);

export const printerCalibrate = defineOperation({
  name: 'printer.calibrate',
  summary: 'Sets the offset of a printer from its calibration pattern.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({
    printerId: z.string(),
    reading: z.discriminatedUnion('by', [
      /** The last number that can be seen at each edge of the stock, in millimetres. */
      z.object({
        by: z.literal('rulers'),
        leftMm: reading,
        rightMm: reading,
        topMm: reading,
        bottomMm: reading,
      }),
      /** Where the cross stands, measured from the left and the top edge, in millimetres. */
      z.object({ by: z.literal('cross'), fromLeftMm: reading, fromTopMm: reading }),
    ]),
  }),
  output: z.object({ xMm: z.number(), yMm: z.number() }),
  run: async (context, { printerId, reading }) => {
    let offset = { xMm: 0, yMm: 0 };
    const result = await record(context, async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const printer = printerIn(station, printerId);
      if (isRefusal(printer)) return printer;
      const { settings } = printer;
      offset =
        reading.by === 'rulers'
          ? offsetFromRulers(reading, settings.stock, settings.offset)
          : offsetFromCross(reading, settings.stock, settings.offset);
      if (Math.max(Math.abs(offset.xMm), Math.abs(offset.yMm)) > 10)
        return refusal('offset-too-large', {}, 'reading');
      const moved = { ...printer, settings: { ...settings, offset } };
      return decideSavePrinter(station, { ...moved, settings: asRecord(moved.settings) });
    });
    return isRefusal(result) ? result : offset;
  },
});
