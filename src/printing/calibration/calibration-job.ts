/** The calibration pattern as a job that any destination prints. */
import { LineCapStyle, PDFDocument, PrintScaling, rgb } from 'pdf-lib';
import sharp from 'sharp';
import { mmPerInch, type PrintJob } from '../destination.ts';
import type { DestinationSettings } from '../destination-settings.ts';
import { calibrationPattern, type PatternSize, type Stroke } from './pattern.ts';

/** A PDF point is 1/72 in (ISO 32000-1 §8.3.2.3). */
const pointsPerMm = 72 / mmPerInch;

/** For the stock and the dots of the destination; the document is printed with the offset that is set, like any other. */
export const calibrationJob = async (
  { stock, dpi }: Pick<DestinationSettings, 'stock' | 'dpi'>,
  title: string,
): Promise<PrintJob> => {
  const strokes = calibrationPattern(stock);
  const [pdf, png] = await Promise.all([toPdf(strokes, stock, title), toPng(strokes, stock, dpi)]);
  return { title, pdf, png, ...stock, dpi, copies: 1, runsOverEdges: true };
};

const toPdf = async (
  strokes: readonly Stroke[],
  { widthMm, heightMm }: PatternSize,
  title: string,
): Promise<Uint8Array> => {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(title, { showInWindowTitleBar: true });
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const page = document.addPage([widthMm * pointsPerMm, heightMm * pointsPerMm]);
  for (const { x1Mm, y1Mm, x2Mm, y2Mm, widthMm: thicknessMm } of strokes) {
    page.drawLine({
      start: { x: x1Mm * pointsPerMm, y: (heightMm - y1Mm) * pointsPerMm },
      end: { x: x2Mm * pointsPerMm, y: (heightMm - y2Mm) * pointsPerMm },
      thickness: thicknessMm * pointsPerMm,
      color: rgb(0, 0, 0),
      lineCap: LineCapStyle.Projecting,
    });
  }
  return document.save();
};

/** Upright and level strokes on whole dots, none thinner than two, which every thermal printer shows (common practice, no source). */
const toPng = (
  strokes: readonly Stroke[],
  { widthMm, heightMm }: PatternSize,
  dpi: number,
): Promise<Uint8Array> => {
  const dots = (mm: number) => Math.round((mm * dpi) / mmPerInch);
  const [width, height] = [dots(widthMm), dots(heightMm)];
  const boxes = strokes.map((stroke) => {
    const thick = Math.max(2, dots(stroke.widthMm));
    const before = Math.floor(thick / 2);
    const left = dots(Math.min(stroke.x1Mm, stroke.x2Mm)) - before;
    const top = dots(Math.min(stroke.y1Mm, stroke.y2Mm)) - before;
    const right = dots(Math.max(stroke.x1Mm, stroke.x2Mm)) - before + thick;
    const bottom = dots(Math.max(stroke.y1Mm, stroke.y2Mm)) - before + thick;
    return `M${left},${top}H${right}V${bottom}H${left}z`;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><path shape-rendering="crispEdges" d="${boxes.join('')}"/></svg>`;
  return sharp(Buffer.from(svg))
    .flatten({ background: '#fff' })
    .toColourspace('b-w')
    .withMetadata({ density: dpi })
    .png()
    .toBuffer();
};
