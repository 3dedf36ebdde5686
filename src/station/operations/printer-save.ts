/** `printer.save`: adds a print destination, or changes one. */
import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { decideSavePrinter } from '../../domain/decide/printer.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { tagKindSchema } from '../../domain/tag-content.ts';
import { tagFaceSchema } from '../../domain/tag-face.ts';
import { destinationSettingsSchema } from '../../printing/destination-settings.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { asRecord } from '../printer-view.ts';
import { record } from '../record.ts';

export const printerSave = defineOperation({
  name: 'printer.save',
  summary: 'Adds a print destination, or changes one.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({
    /** Absent for a new one. */
    printerId: z.string().optional(),
    settings: destinationSettingsSchema,
    /** The kinds of tag that go there unless somebody chooses otherwise. */
    tagKinds: z.array(tagKindSchema),
    /** Flat and without a hole where absent. */
    face: tagFaceSchema.default({ form: { shape: 'flat' } }),
  }),
  output: z.object({ printerId: z.string() }),
  run: async (context, input) => {
    const printerId = input.printerId ?? randomUUID();
    const settings = asRecord(input.settings);
    const result = await record(context, async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      if (
        input.printerId !== undefined &&
        !station.printers.some((printer) => printer.printerId === printerId)
      ) {
        return refusal('printer-not-known', { printerId }, 'printerId');
      }
      const { face } = input;
      return decideSavePrinter(station, {
        printerId,
        settings,
        tagKinds: [...new Set(input.tagKinds)],
        face,
      });
    });
    return isRefusal(result) ? result : { printerId };
  },
});
