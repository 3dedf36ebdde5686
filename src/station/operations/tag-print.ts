/** `tag.print`: sends the tag of a device to a printer; it is recorded as given out when the printer has taken it. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { reprintReasonSchema } from '../../domain/tag-content.ts';
import { openDestination } from '../../printing/open-destination.ts';
import { recordIssue, refusedIssue } from '../issue-tag.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { printerIn } from '../printer-view.ts';
import { renderDeviceTag, tagRequestSchema } from '../render-device-tag.ts';

export const tagPrint = defineOperation({
  name: 'tag.print',
  summary: 'Sends the tag of a device to a printer.',
  kind: 'command',
  access: everyRole,
  input: tagRequestSchema
    .pick({ benchId: true, kind: true })
    .extend({ printerId: z.string(), reprintBecause: reprintReasonSchema.optional() }),
  output: z.object({ job: z.int() }),
  run: async (context, { benchId, kind, printerId, reprintBecause }) => {
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const printer = printerIn(station, printerId);
    if (isRefusal(printer)) return printer;
    const { settings } = printer;
    const { dpi, stock, colour } = settings;
    const request = tagRequestSchema.parse({ benchId, kind, dpi, stock, face: printer.face, ink: colour });
    const tag = await renderDeviceTag(context, request);
    if (isRefusal(tag)) return tag;
    const { content, rendered } = tag;
    const how = { printerId, reprintBecause };
    const refused = await refusedIssue(context, content, how);
    if (refused !== undefined) return refused;
    const { pdf, png, widthMm, heightMm } = rendered;
    const title = `${station.name} ${content.benchId}`;
    const job = context.printJobs.start(async ({ signal, onProgress }) => {
      const destination = await openDestination(settings);
      const outcome = await destination.print(
        { title, pdf, png, widthMm, heightMm, dpi, copies: 1 },
        { signal, onState: onProgress },
      );
      if (isRefusal(outcome)) return outcome;
      return (await recordIssue(context, content, pdf, how)) ?? outcome;
    });
    return { job };
  },
});
