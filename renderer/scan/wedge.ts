/**
 * Tells a scanner that types like a keyboard from a person who types.
 *
 * A scanner sends its characters a few milliseconds apart and ends with Enter or Tab. A person may strike
 * two keys within 35 ms, but not four in a row with Enter after them (common practice, no source for the figures).
 */

import { readCommandSymbol } from '../../src/domain/command-symbol.ts';

/** Characters that a scan has at least; the digits of the command sheet, known by name, have three. */
export const scanMinLength = 4;
/** Milliseconds between two characters of a scan, at most. */
export const scanMaxGapMs = 35;
/** Milliseconds from the last character of a scan to its Enter or Tab, at most. */
export const scanMaxEndGapMs = 100;

/** A key that a person struck by itself counts when nothing has followed it for this long; a slow scanner goes on sooner. */
export const settleMs = 150;

/** The characters that came quickly one after another until now. */
export interface Burst {
  readonly text: string;
  readonly lastAt: number;
}

export const noBurst: Burst = { text: '', lastAt: Number.NEGATIVE_INFINITY };

export type WedgeDecision =
  /** A character that starts a burst, or a person's keystroke: let it through, but remember what was there before. */
  | { readonly kind: 'first' }
  /** A character so soon after the one before that it may be a scanner's. */
  | { readonly kind: 'burst' }
  /** The end of a scan. */
  | { readonly kind: 'scan'; readonly text: string }
  /** A key that belongs to no scan. */
  | { readonly kind: 'other' };

/** `key` as in `KeyboardEvent.key`, `at` in milliseconds on any steady clock. */
export const pressKey = (
  burst: Burst,
  key: string,
  at: number,
): { readonly burst: Burst; readonly decision: WedgeDecision } => {
  if (isModifier(key)) return { burst, decision: { kind: 'other' } };
  const gap = at - burst.lastAt;
  if (key === 'Enter' || key === 'Tab') {
    const isLongEnough = burst.text.length >= scanMinLength || readCommandSymbol(burst.text) !== undefined;
    const isScan = isLongEnough && gap <= scanMaxEndGapMs;
    return { burst: noBurst, decision: isScan ? { kind: 'scan', text: burst.text } : { kind: 'other' } };
  }
  if ([...key].length !== 1) return { burst: noBurst, decision: { kind: 'other' } };
  return gap <= scanMaxGapMs
    ? { burst: { text: burst.text + key, lastAt: at }, decision: { kind: 'burst' } }
    : { burst: { text: key, lastAt: at }, decision: { kind: 'first' } };
};

const isModifier = (key: string): boolean =>
  ['Shift', 'CapsLock', 'AltGraph', 'Alt', 'Control', 'NumLock'].includes(key);
