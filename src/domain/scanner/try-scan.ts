/** One scan of the known symbol: whether it came through, and what is wrong with how it was typed. */
import { type KeyboardFault, readKeystrokes } from './keystroke.ts';
import { learningText, longestGap, type ScanSample } from './learn-scanner.ts';
import { slowestScanGapMs } from './scanner.ts';

export type TriedScan =
  | {
      readonly isRead: true;
      /** Milliseconds from one character to the next, at most. */
      readonly gapMs: number;
      readonly isSlow: boolean;
      readonly end: ScanSample['end'];
      readonly fault?: KeyboardFault;
    }
  /** Another text was scanned, or this one under no layout that is known here. */
  | { readonly isRead: false; readonly text: string };

export const tryScan = (sample: ScanSample): TriedScan => {
  const readings = readKeystrokes(sample.keys);
  const read = readings.find(({ text }) => text.includes(learningText));
  if (read === undefined) return { isRead: false, text: readings[0]?.text ?? '' };
  const gapMs = Math.ceil(longestGap(sample));
  return {
    isRead: true,
    gapMs,
    isSlow: gapMs > slowestScanGapMs,
    end: sample.end,
    ...(read.fault === undefined ? {} : { fault: read.fault }),
  };
};
