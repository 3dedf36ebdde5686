/** The document that an IPP printer is sent, and the attributes of the job that go with it. */
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { DocumentFormat, PrintJob } from '../destination.ts';
import type { IppSettings } from '../destination-settings.ts';
import { sizeText } from '../job-fit.ts';
import { pdfOf } from '../moved-pdf.ts';
import { rasterOf, turned } from '../raster.ts';
import { attribute, type IppValue, integer, text } from './ipp-message.ts';
import { type MediaMatch, matchMedia, mediaCollection, mediaText, type Stock } from './media.ts';
import type { PrinterDescription } from './printer-description.ts';
import { type PwgRasterType, pwgRaster } from './pwg-raster.ts';

export interface IppDocument {
  readonly format: Exclude<DocumentFormat, 'label graphics'>;
  readonly content: Uint8Array;
  readonly jobAttributes: readonly (readonly [string, readonly IppValue[]])[];
}

/** The refusal of the stock by what the printer takes and what is loaded; undefined where it goes. */
export const stockRefusal = (printer: PrinterDescription, settings: IppSettings): Refusal | undefined => {
  const values = { printer: settings.name, stock: sizeText(settings.stock) };
  if (printer.supported.length > 0 && matchMedia(settings.stock, printer.supported) === undefined) {
    return refusal('printer-size-refused', { ...values, takes: mediaText(printer.supported) });
  }
  if (
    settings.loadedStock === 'must-match' &&
    printer.ready.length > 0 &&
    matchMedia(settings.stock, printer.ready) === undefined
  ) {
    return refusal('printer-stock-not-loaded', { ...values, loaded: mediaText(printer.ready) });
  }
  return undefined;
};

/** Refuses where the printer takes neither the formats, nor the dots, nor so many copies. */
export const documentFor = async (
  job: PrintJob,
  printer: PrinterDescription,
  settings: IppSettings,
): Promise<IppDocument | Refusal> => {
  const match = matchMedia(settings.stock, printer.supported) ?? 'as it lies';
  if (job.copies > printer.mostCopies) {
    return refusal('printer-copies-refused', { printer: settings.name, most: printer.mostCopies });
  }
  const format = formatOf(printer, settings);
  if (isRefusal(format)) return format;
  const content =
    format === 'application/pdf'
      ? await pdfOf(job, settings)
      : await rasterDocument(job, printer, settings, match);
  if (isRefusal(content)) return content;
  return { format, content, jobAttributes: jobAttributesOf(job, printer, settings, match) };
};

const formatOf = (
  printer: PrinterDescription,
  settings: IppSettings,
): Exclude<DocumentFormat, 'label graphics'> | Refusal => {
  const takes = (format: string) => printer.formats.includes(format);
  if (settings.format !== 'pwg-raster' && takes('application/pdf')) return 'application/pdf';
  if (settings.format !== 'pdf' && takes('image/pwg-raster')) return 'image/pwg-raster';
  return refusal('printer-format-refused', {
    printer: settings.name,
    takes: printer.formats.filter((format) => format !== 'application/octet-stream').join(', '),
  });
};

const rasterDocument = async (
  job: PrintJob,
  printer: PrinterDescription,
  settings: IppSettings,
  match: MediaMatch,
): Promise<Uint8Array | Refusal> => {
  if (printer.rasterDpi.length > 0 && !printer.rasterDpi.includes(job.dpi)) {
    const takes = printer.rasterDpi.join(', ');
    return refusal('printer-resolution-refused', { printer: settings.name, dpi: job.dpi, takes });
  }
  const type = rasterTypeOf(printer, settings);
  if (type === undefined) {
    const takes = printer.rasterTypes.join(', ');
    return refusal('printer-format-refused', { printer: settings.name, takes });
  }
  const raster = await rasterOf(job, settings, type === 'srgb_8');
  if (isRefusal(raster)) return raster;
  return match === 'turned'
    ? pwgRaster({ raster: turned(raster), type, dpi: job.dpi, ...turnedStock(settings.stock) })
    : pwgRaster({ raster, type, dpi: job.dpi, ...settings.stock });
};

/** One bit where the printer takes it: a tag in one colour has no greys to lose. */
const rasterTypeOf = (printer: PrinterDescription, settings: IppSettings): PwgRasterType | undefined => {
  const wanted: readonly PwgRasterType[] =
    settings.colour === 'colour' ? ['srgb_8', 'sgray_8', 'black_1'] : ['black_1', 'sgray_8', 'srgb_8'];
  return wanted.find((type) => printer.rasterTypes.includes(type));
};

const turnedStock = ({ widthMm, heightMm }: Stock): Stock => ({ widthMm: heightMm, heightMm: widthMm });

/** Only what the printer knows; `media-col` always, for a tag on other stock is none. */
const jobAttributesOf = (
  job: PrintJob,
  printer: PrinterDescription,
  settings: IppSettings,
  match: MediaMatch,
): (readonly [string, readonly IppValue[]])[] => {
  const stock = match === 'turned' ? turnedStock(settings.stock) : settings.stock;
  const colourMode = settings.colour === 'colour' ? 'color' : 'monochrome';
  return [
    ...(job.copies > 1 ? [attribute('copies', integer(job.copies))] : []),
    attribute('media-col', mediaCollection(stock)),
    ...(printer.colourModes.includes(colourMode)
      ? [attribute('print-color-mode', text('keyword', colourMode))]
      : []),
    ...(printer.scalings.includes('none') ? [attribute('print-scaling', text('keyword', 'none'))] : []),
  ];
};
