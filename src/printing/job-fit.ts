/** Whether a job is made for a destination: its size against the stock, its dots against the printer. */
import { type Refusal, refusal } from '../domain/refusal.ts';
import type { PrintJob } from './destination.ts';
import type { DestinationSettings } from './destination-settings.ts';

/** Sizes closer than this are one size: stock is cut no better (common practice, no source). */
export const sizeToleranceMm = 0.5;

/** The refusal of a job made for other stock or other dots; undefined where it fits. */
export const misfitOf = (job: PrintJob, settings: DestinationSettings): Refusal | undefined => {
  if (
    Math.abs(job.widthMm - settings.stock.widthMm) > sizeToleranceMm ||
    Math.abs(job.heightMm - settings.stock.heightMm) > sizeToleranceMm
  ) {
    return refusal('printer-stock-mismatch', {
      printer: settings.name,
      size: sizeText(job),
      stock: sizeText(settings.stock),
    });
  }
  if (job.dpi !== settings.dpi) {
    return refusal('printer-dpi-mismatch', {
      printer: settings.name,
      dpi: job.dpi,
      printerDpi: settings.dpi,
    });
  }
  return undefined;
};

/** `100 × 50 mm`. */
export const sizeText = ({ widthMm, heightMm }: { widthMm: number; heightMm: number }): string =>
  `${round(widthMm)} × ${round(heightMm)} mm`;

const round = (value: number) => Math.round(value * 10) / 10;
