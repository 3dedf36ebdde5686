/** A document with its content moved on the page, for a printer that prints a little beside its stock. */
import { PDFDocument, PrintScaling } from 'pdf-lib';
import { mmPerInch, type PrintJob } from './destination.ts';
import type { DestinationSettings } from './destination-settings.ts';

/** A PDF point is 1/72 in (ISO 32000-1 §8.3.2.3). */
const pointsPerMm = 72 / mmPerInch;

/** The document itself, byte for byte, where there is no offset. */
export const pdfOf = async (job: PrintJob, settings: DestinationSettings): Promise<Uint8Array> => {
  const { xMm, yMm } = settings.offset;
  if (xMm === 0 && yMm === 0) return job.pdf;
  const moved = await PDFDocument.create({ updateMetadata: false });
  moved.setTitle(job.title, { showInWindowTitleBar: true });
  moved.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  for (const page of await moved.embedPdf(job.pdf)) {
    moved.addPage([page.width, page.height]).drawPage(page, { x: xMm * pointsPerMm, y: -yMm * pointsPerMm });
  }
  return moved.save();
};
