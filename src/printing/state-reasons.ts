/** What a printer says of itself in the keywords of the standard, as a refusal that a person can act on. */
import { type Refusal, type RefusalCode, refusal } from '../domain/refusal.ts';
import type { JobState, PrinterCondition } from './destination.ts';
import type { DestinationSettings } from './destination-settings.ts';
import { sizeText } from './job-fit.ts';

/**
 * The keywords of `printer-state-reasons` after which nothing comes out, the most telling first.
 * Source: RFC 8011 §5.4.12; `cover-open`, `door-open` and `interlock-open` also there.
 */
const stopping: readonly (readonly [keyword: string, code: RefusalCode])[] = [
  ['media-jam', 'printer-media-jam'],
  ['cover-open', 'printer-cover-open'],
  ['door-open', 'printer-cover-open'],
  ['interlock-open', 'printer-cover-open'],
  ['media-empty', 'printer-media-empty'],
  ['media-needed', 'printer-media-empty'],
  ['marker-supply-empty', 'printer-supply-empty'],
  ['toner-empty', 'printer-supply-empty'],
  ['developer-empty', 'printer-supply-empty'],
  ['input-tray-missing', 'printer-media-empty'],
  ['paused', 'printer-paused'],
  ['moving-to-paused', 'printer-paused'],
  ['offline', 'printer-unreachable'],
  ['timed-out', 'printer-unreachable'],
  ['connecting-to-device', 'printer-unreachable'],
  ['shutdown', 'printer-unreachable'],
  ['output-tray-missing', 'printer-needs-attention'],
  ['output-area-full', 'printer-needs-attention'],
  ['marker-waste-full', 'printer-needs-attention'],
  ['fuser-over-temp', 'printer-temperature'],
  ['fuser-under-temp', 'printer-temperature'],
  ['opc-life-over', 'printer-needs-attention'],
  ['spool-area-full', 'printer-busy'],
];

/** Without the suffix of severity, `-error`, `-warning` or `-report` (RFC 8011 §5.4.12); `none` is no reason. */
export const keywordsOf = (reasons: readonly string[]): string[] =>
  reasons
    .filter((reason) => reason !== 'none')
    .map((reason) => reason.replace(/-(error|warning|report)$/, ''));

/**
 * A warning or a report does not stop the printer; a keyword without suffix is an error (RFC 8011 §5.4.12). `media-needed`
 * always counts: the printer waits for a person to load what a job needs.
 */
const errorsOf = (reasons: readonly string[]): string[] =>
  keywordsOf(
    reasons.filter((reason) => reason.startsWith('media-needed') || !/-(warning|report)$/.test(reason)),
  );

/** Of one tray or one colour among several: a job may come out all the same. */
const partial = [
  'media-empty',
  'input-tray-missing',
  'marker-supply-empty',
  'toner-empty',
  'developer-empty',
];

/** Why a job at work does not go on. While neither printer nor job is stopped, what is empty is so elsewhere. */
export const standstillOf = (
  printer: { readonly condition: PrinterCondition; readonly reasons: readonly string[] },
  job: JobState,
  settings: DestinationSettings,
  address: string,
): Refusal | undefined => {
  const stopped = printer.condition === 'stopped' || job === 'processing-stopped';
  const reasons = stopped
    ? printer.reasons
    : printer.reasons.filter((reason) => !keywordsOf([reason]).some((word) => partial.includes(word)));
  return problemOf(stopped ? 'stopped' : printer.condition, reasons, settings, address);
};

/** Why nothing would come out; undefined where nothing is known to stand in the way. */
export const problemOf = (
  condition: PrinterCondition,
  reasons: readonly string[],
  settings: DestinationSettings,
  address = '',
): Refusal | undefined => {
  const errors = errorsOf(reasons);
  const found = stopping.find(([keyword]) => errors.includes(keyword));
  const values = {
    printer: settings.name,
    stock: sizeText(settings.stock),
    address,
    reasons: keywordsOf(reasons).join(', '),
  };
  if (found !== undefined) return refusal(found[1], values);
  if (condition !== 'stopped') return undefined;
  return values.reasons === ''
    ? refusal('printer-stopped', values)
    : refusal('printer-needs-attention', values);
};
