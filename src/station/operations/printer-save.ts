/** `printer.save`: adds a print destination, or changes one. */
import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { decideSavePrinter } from '../../domain/decide/printer.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { tagKindSchema } from '../../domain/tag-content.ts';
import { type TagFace, tagFaceSchema } from '../../domain/tag-face.ts';
import { destinationSettingsSchema } from '../../printing/destination-settings.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { asRecord } from '../printer-view.ts';
import { record } from '../record.ts';

const flat: TagFace = { form: { shape: 'flat' } };

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
    /** Where absent, as it was; flat and without a hole on a new one. */
    face: tagFaceSchema.optional(),
  }),
  output: z.object({ printerId: z.string() }),
  run: async (context, input) => {
    const printerId = input.printerId ?? randomUUID();
    const settings = asRecord(input.settings);
    const result = await record(context, async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const known = station.printers.find((printer) => printer.printerId === printerId);
      if (input.printerId !== undefined && known === undefined) {
        return refusal('printer-not-known', { printerId }, 'printerId');
      }
      const face = input.face ?? known?.face ?? flat;
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
