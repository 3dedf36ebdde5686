/** What an IPP printer says of itself, in the words of this program. */
import type { PrinterCondition } from '../destination.ts';
import { type Attributes, numbersOf, textsOf } from './ipp-message.ts';
import { type MediaSize, readyMedia, supportedMedia } from './media.ts';

export interface PrinterDescription {
  readonly condition: PrinterCondition;
  readonly reasons: readonly string[];
  readonly acceptingJobs: boolean;
  readonly makeAndModel?: string;
  readonly formats: readonly string[];
  readonly operations: ReadonlySet<number>;
  readonly supported: readonly MediaSize[];
  readonly ready: readonly MediaSize[];
  /** In dots per inch, both ways alike; empty where it does not say. */
  readonly rasterDpi: readonly number[];
  readonly rasterTypes: readonly string[];
  readonly colourModes: readonly string[];
  readonly scalings: readonly string[];
  readonly jobAttributes: readonly string[];
  readonly mostCopies: number;
}

/** What is asked of the printer (RFC 8011 §5.4, PWG 5100.7, PWG 5100.13, PWG 5102.4). */
export const askedAttributes = [
  'copies-supported',
  'document-format-supported',
  'job-creation-attributes-supported',
  'media-col-ready',
  'media-ready',
  'media-size-supported',
  'media-supported',
  'operations-supported',
  'print-color-mode-supported',
  'print-scaling-supported',
  'printer-is-accepting-jobs',
  'printer-make-and-model',
  'printer-state',
  'printer-state-reasons',
  'pwg-raster-document-resolution-supported',
  'pwg-raster-document-type-supported',
] as const;

/** Source: RFC 8011 §5.4.11. */
const conditions: Readonly<Record<number, PrinterCondition>> = { 3: 'idle', 4: 'processing', 5: 'stopped' };

export const conditionOf = (printer: Attributes): PrinterCondition =>
  conditions[numbersOf(printer, 'printer-state')[0] ?? 0] ?? 'unknown';

export const describePrinter = (printer: Attributes): PrinterDescription => {
  const makeAndModel = textsOf(printer, 'printer-make-and-model')[0];
  return {
    condition: conditionOf(printer),
    reasons: textsOf(printer, 'printer-state-reasons'),
    acceptingJobs: !(printer.get('printer-is-accepting-jobs') ?? []).some(
      (value) => value.kind === 'boolean' && !value.value,
    ),
    ...(makeAndModel === undefined ? {} : { makeAndModel }),
    formats: textsOf(printer, 'document-format-supported').map((format) => format.toLowerCase()),
    operations: new Set(numbersOf(printer, 'operations-supported')),
    supported: supportedMedia(printer),
    ready: readyMedia(printer),
    rasterDpi: (printer.get('pwg-raster-document-resolution-supported') ?? []).flatMap((value) =>
      value.kind === 'resolution' && value.unit === 'dpi' && value.crossFeed === value.feed
        ? [value.crossFeed]
        : [],
    ),
    rasterTypes: textsOf(printer, 'pwg-raster-document-type-supported'),
    colourModes: textsOf(printer, 'print-color-mode-supported'),
    scalings: textsOf(printer, 'print-scaling-supported'),
    jobAttributes: textsOf(printer, 'job-creation-attributes-supported'),
    mostCopies: mostCopiesOf(printer),
  };
};

/** A printer that says nothing of copies makes one. */
const mostCopiesOf = (printer: Attributes): number =>
  (printer.get('copies-supported') ?? []).reduce(
    (most, value) =>
      value.kind === 'rangeOfInteger'
        ? Math.max(most, value.upper)
        : value.kind === 'integer'
          ? Math.max(most, value.value)
          : most,
    1,
  );
