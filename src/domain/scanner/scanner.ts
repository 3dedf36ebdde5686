/** How the scanner of a station types: what it was found to do, and what of its typing is not part of a code. */
import { z } from 'zod';

/** Milliseconds between two characters of a scan, at most; a person at the keyboard is slower (common practice, no source). */
export const slowestScanGapMs = 75;

export const scannerSchema = z.object({
  /** Milliseconds from one character to the next, at most, as it was measured. */
  gapMs: z.number().positive().max(slowestScanGapMs),
  /** The key that ends each scan; with `none`, a pause does. */
  end: z.enum(['Enter', 'Tab', 'none']),
  /** Typed before and after each code. */
  prefix: z.string().max(10),
  suffix: z.string().max(10),
  /** True where it types as for the US layout, whatever the layout of this computer. */
  usesUsPlaces: z.boolean(),
});
export type Scanner = z.infer<typeof scannerSchema>;

/** The code without what this scanner puts before and after it. */
export const withoutAffixes = (text: string, { prefix, suffix }: Scanner): string => {
  const start = prefix !== '' && text.startsWith(prefix) ? text.slice(prefix.length) : text;
  return suffix !== '' && start.endsWith(suffix) ? start.slice(0, -suffix.length) : start;
};
