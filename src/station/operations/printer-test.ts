/** `printer.test`: prints the calibration pattern, with which the offset of a printer is measured. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { openDestination } from '../../printing/open-destination.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { printerIn } from '../printer-view.ts';

export const printerTest = defineOperation({
  name: 'printer.test',
  summary: 'Prints the calibration pattern.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({ printerId: z.string() }),
  output: z.object({ job: z.int() }),
  run: async ({ ledger, printJobs }, { printerId }) => {
    const station = await ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const printer = printerIn(station, printerId);
    if (isRefusal(printer)) return printer;
    const { settings } = printer;
    const { calibrationJob } = await import('../../printing/calibration/calibration-job.ts');
    const pattern = await calibrationJob(settings, `${station.name}: calibration`);
    const job = printJobs.start(async ({ signal, onProgress }) => {
      const destination = await openDestination(settings);
      return destination.print(pattern, { signal, onState: onProgress });
    });
    return { job };
  },
});
