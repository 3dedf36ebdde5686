/** Print destinations as they are on record, with their settings in the shape that the printing room checks. */
import { z } from 'zod';
import type { Station } from '../domain/evolve.ts';
import { type Printer, printerSchema } from '../domain/printer.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import { tagKindSchema } from '../domain/tag-content.ts';
import { tagFaceSchema } from '../domain/tag-face.ts';
import { destinationSettingsSchema } from '../printing/destination-settings.ts';

export const printerViewSchema = z.object({
  printerId: z.string(),
  settings: destinationSettingsSchema,
  tagKinds: z.array(tagKindSchema),
  face: tagFaceSchema,
});
export type PrinterView = z.infer<typeof printerViewSchema>;

/** By name. A printer whose settings this version does not understand is left out. */
export const printerViews = ({ printers }: Station): PrinterView[] =>
  printers
    .flatMap((printer) => {
      const view = printerViewSchema.safeParse(printer);
      return view.success ? [view.data] : [];
    })
    .sort((a, b) => a.settings.name.localeCompare(b.settings.name));

export const printerIn = (station: Station, printerId: string): PrinterView | Refusal =>
  printerViews(station).find((printer) => printer.printerId === printerId) ??
  refusal('printer-not-known', { printerId }, 'printerId');

/** Settings as plain JSON, the form in which the record keeps them. */
export const asRecord = (settings: PrinterView['settings']): Printer['settings'] =>
  printerSchema.shape.settings.parse(JSON.parse(JSON.stringify(settings)));
