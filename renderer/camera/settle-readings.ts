/** When the readings of frame after frame are enough to go by. */
import type { SightReading } from './reader-messages.ts';

export type SettledReading = Extract<SightReading, { kind: 'code' | 'worn tag' }>;

/** What was read once and waits for a second frame that says the same. */
export interface Awaited {
  readonly code?: string | undefined;
  readonly wornTag?: string | undefined;
}

export interface Settlement {
  readonly awaited: Awaited;
  /** To be dealt with now. */
  readonly settled?: SettledReading;
}

/**
 * A code that cannot be wrong counts at once. Any other code, and a worn tag, counts when a second frame gives the same with
 * no other in between; frames in which nothing is read take nothing away.
 */
export const settle = (awaited: Awaited, reading: SightReading): Settlement => {
  switch (reading.kind) {
    case 'none':
      return { awaited };
    case 'several':
      return { awaited: {} };
    case 'code':
      return reading.isSure || awaited.code === reading.text
        ? { awaited: {}, settled: reading }
        : { awaited: { code: reading.text } };
    case 'worn tag':
      return awaited.wornTag === reading.benchId
        ? { awaited: {}, settled: reading }
        : { awaited: { wornTag: reading.benchId } };
  }
};
