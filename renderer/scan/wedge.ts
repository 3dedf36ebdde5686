/**
 * Tells a scanner that types like a keyboard from a person who types.
 *
 * A scanner sends its characters a few milliseconds apart, slow ones up to 60 ms, evenly, and ends with Enter or Tab. A person
 * may strike two keys within 35 ms, but not four in a row with Enter after them, nor six in a row evenly within 75 ms (common
 * practice, no source for the figures). A scanner that the station has learnt is told by its own pace and its own end.
 */
import { readCommandSymbol } from '../../src/domain/command-symbol.ts';
import type { Keystroke } from '../../src/domain/scanner/keystroke.ts';
import { type Scanner, slowestScanGapMs } from '../../src/domain/scanner/scanner.ts';

/** Characters that a scan has at least; the digits of the command sheet, known by name, have three. */
export const scanMinLength = 4;
/** Milliseconds between two characters of a scan, at most, where four of them are enough. */
export const scanMaxGapMs = 35;
/** Characters that a slow scan has at least, and by how many milliseconds its gaps may differ. */
const slowScanMinLength = 6;
const slowScanUnevenMs = 45;
/** Milliseconds from the last character of a scan to its Enter or Tab, at most. */
export const scanMaxEndGapMs = 100;
/** What the gaps of a scanner may exceed what was measured by, in milliseconds (common practice, no source). */
const learntGapMarginMs = 15;
/** Characters so few that they may be a person's keys that fell together. */
export const personMaxLength = 3;

/** Keys that a person struck count when nothing has followed them for this long; a slow scanner goes on sooner. */
export const settleMs = 150;

/** The characters that came quickly one after another until now. */
export type Burst = readonly Keystroke[];

export const noBurst: Burst = [];

/** A key as far as the wedge cares: it writes, it may end a scan, it changes nothing, or it belongs to no scan. */
export type StruckKey =
  | { readonly kind: 'writes'; readonly stroke: Keystroke }
  | { readonly kind: 'ends'; readonly end: 'Enter' | 'Tab'; readonly at: number }
  | { readonly kind: 'modifies' }
  | { readonly kind: 'breaks' };

export interface WedgeScan {
  readonly keys: Burst;
  readonly end: 'Enter' | 'Tab' | 'none';
  /** Leading keys that may be a person's, struck just before the scanner began: they came far less quickly than the rest. */
  readonly lead: number;
  /** False for a slow one, which a person may just have typed. */
  readonly isSure: boolean;
}

export type WedgeDecision =
  /** A character that starts a burst, or a person's keystroke: let it through, but remember what was there before. */
  | { readonly kind: 'first' }
  /** A character so soon after the one before that it may be a scanner's. */
  | { readonly kind: 'burst' }
  /** The end of a scan. */
  | { readonly kind: 'scan'; readonly scan: WedgeScan }
  /** A key that belongs to no scan. */
  | { readonly kind: 'other' };

export const pressKey = (
  burst: Burst,
  key: StruckKey,
  scanner?: Scanner,
): { readonly burst: Burst; readonly decision: WedgeDecision } => {
  switch (key.kind) {
    case 'modifies':
      return { burst, decision: { kind: 'other' } };
    case 'breaks':
      return { burst: noBurst, decision: { kind: 'other' } };
    case 'ends': {
      const last = burst.at(-1);
      const isSoon = last !== undefined && key.at - last.at <= scanMaxEndGapMs;
      const scan = isSoon ? scanOf(burst, key.end, scanner) : undefined;
      return { burst: noBurst, decision: scan === undefined ? { kind: 'other' } : { kind: 'scan', scan } };
    }
    case 'writes': {
      const last = burst.at(-1);
      const isSoon = last !== undefined && key.stroke.at - last.at <= longestGapMs(scanner);
      return isSoon
        ? { burst: [...burst, key.stroke], decision: { kind: 'burst' } }
        : { burst: [key.stroke], decision: { kind: 'first' } };
    }
  }
};

/** The scan that a burst is when nothing has followed it for `settleMs`: only of a scanner that is known to end so. */
export const settledScan = (burst: Burst, scanner: Scanner | undefined): WedgeScan | undefined =>
  scanner?.end === 'none' ? scanOf(burst, 'none', scanner) : undefined;

/** True of a burst that no person typed and that nothing ended: the scanner sends no Enter. */
export const lacksEnd = (burst: Burst): boolean =>
  burst.length >= 2 * scanMinLength && gapsOf(burst).every((gap) => gap <= scanMaxGapMs);

const longestGapMs = (scanner: Scanner | undefined): number =>
  Math.max(slowestScanGapMs, (scanner?.gapMs ?? 0) + learntGapMarginMs);

const scanOf = (keys: Burst, end: WedgeScan['end'], scanner: Scanner | undefined): WedgeScan | undefined => {
  const lead = leadOf(keys);
  const scan = { keys, end, lead };
  const text = keys.map((stroke) => stroke.text).join('');
  const isKnownShort = readCommandSymbol(text) !== undefined;
  const gaps = gapsOf(keys.slice(lead));
  const isFast = gaps.every((gap) => gap <= scanMaxGapMs);
  if (isFast && (gaps.length + 1 >= scanMinLength || isKnownShort)) return { ...scan, isSure: true };
  if (isLearntPace(gaps, scanner) && gaps.length + 1 >= scanMinLength)
    return { ...scan, isSure: scanner?.end === end };
  const isEven = Math.max(...gaps) - Math.min(...gaps) <= slowScanUnevenMs;
  if (isEven && (gaps.length + 1 >= slowScanMinLength || isKnownShort)) return { ...scan, isSure: false };
  return undefined;
};

const isLearntPace = (gaps: readonly number[], scanner: Scanner | undefined): boolean =>
  scanner !== undefined && gaps.every((gap) => gap <= scanner.gapMs + learntGapMarginMs);

const gapsOf = (keys: Burst): readonly number[] =>
  keys.slice(1).map(({ at }, index) => at - (keys[index]?.at ?? at));

const leadOf = (keys: Burst): number => {
  let lead = 0;
  for (
    let gaps = gapsOf(keys);
    lead < personMaxLength && gaps.length >= scanMinLength;
    gaps = gaps.slice(1)
  ) {
    const [first = 0, ...rest] = gaps;
    if (first <= 3 * Math.max(...rest) + 5) break;
    lead += 1;
  }
  return lead;
};
