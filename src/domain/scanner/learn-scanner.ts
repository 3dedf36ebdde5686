/** Learns how a scanner types from a symbol that is known, scanned three times. */
import { z } from 'zod';
import { type Refusal, refusal } from '../refusal.ts';
import { type KeyboardFault, keystrokeSchema, readKeystrokes } from './keystroke.ts';
import { type Scanner, slowestScanGapMs } from './scanner.ts';

/**
 * The text of the symbol that a scanner is learnt from: letters of both cases, and the signs that lie elsewhere on a Spanish
 * keyboard. No sign occurs twice in a row, so that a doubled character shows.
 */
export const learningText = 'Scan-it/2+[3]';

export const scanSampleSchema = z.object({
  keys: z.array(keystrokeSchema).min(1).max(200),
  end: z.enum(['Enter', 'Tab', 'none']),
});
export type ScanSample = z.infer<typeof scanSampleSchema>;

export interface LearntScanner {
  readonly scanner: Scanner;
  /** What is wrong with the keyboard of this computer, or with the setting of the scanner, and is put right from now on. */
  readonly fault?: KeyboardFault;
}

/** Scans that it takes; fewer could be chance. */
export const samplesNeeded = 3;

/**
 * Refuses where the scans differ from one another, where none of them holds the text under any layout that is known here, and
 * where the characters come no faster than a person's.
 */
export const learnScanner = (samples: readonly ScanSample[]): LearntScanner | Refusal => {
  if (samples.length < samplesNeeded) return refusal('scanner-more-scans', { needed: samplesNeeded });
  const found = samples.map(readSample).filter((reading) => reading !== undefined);
  const [first] = found;
  if (first === undefined || found.length < samples.length)
    return refusal('scanner-text-not-found', { text: learningText });
  if (found.some((reading) => !isSame(reading, first))) return refusal('scanner-scans-differ');
  const gapMs = Math.max(...samples.map(longestGap));
  if (gapMs > slowestScanGapMs)
    return refusal('scanner-too-slow', { gap: Math.round(gapMs), most: slowestScanGapMs });
  const { prefix, suffix, end, usesUsPlaces, fault } = first;
  const scanner = { gapMs: Math.max(1, Math.ceil(gapMs)), end, prefix, suffix, usesUsPlaces };
  return fault === undefined ? { scanner } : { scanner, fault };
};

interface SampleReading extends Omit<Scanner, 'gapMs'> {
  readonly fault?: KeyboardFault;
}

const readSample = ({ keys, end }: ScanSample): SampleReading | undefined => {
  for (const { text, fault } of readKeystrokes(keys)) {
    const at = text.indexOf(learningText);
    if (at < 0) continue;
    const affixes = { prefix: text.slice(0, at), suffix: text.slice(at + learningText.length) };
    if (affixes.prefix.length > 10 || affixes.suffix.length > 10) return undefined;
    const usesUsPlaces = fault === 'layout' || fault === 'caps lock and layout';
    return { ...affixes, end, usesUsPlaces, ...(fault === undefined ? {} : { fault }) };
  }
  return undefined;
};

const isSame = (one: SampleReading, other: SampleReading): boolean =>
  one.prefix === other.prefix &&
  one.suffix === other.suffix &&
  one.end === other.end &&
  one.fault === other.fault;

/** Milliseconds between two characters, at most. */
export const longestGap = ({ keys }: ScanSample): number =>
  Math.max(0, ...keys.slice(1).map(({ at }, index) => at - (keys[index]?.at ?? at)));
