/** One thing that happened at the invented depot, with its place in time. */
import type { Decision } from '../../domain/decide/decision.ts';
import type { Occasion } from '../../domain/event.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';

export const minutesADay = 24 * 60;

export interface TimedStep {
  /** Before the moment of loading. */
  readonly minutesAgo: number;
  readonly by: string;
  readonly decide: (reader: LedgerReader, occasion: Occasion) => Promise<Decision>;
}
