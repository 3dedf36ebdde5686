/** What is said between the thread that reads pictures and the one that asks it to. */
import type { BenchId } from '../../domain/brand.ts';
import type { Refusal } from '../../domain/refusal.ts';
import type { ReadSymbol } from './read-symbols.ts';
import type { WornReading } from './worn-reading.ts';

/** Every symbol of any symbology that can be read as it is, and what the picture comes to as a tag of ours. */
export interface PictureReading {
  readonly symbols: readonly ReadSymbol[];
  readonly reading: WornReading;
}

export interface ToThread {
  readonly image: Uint8Array;
  readonly budgetMs: number;
  readonly knowsRegister: boolean;
  /** Two numbers of 32 bits: at `stopAt`, 1 once the reading is not wanted any more; at `answerAt`, whether a bench ID is registered. */
  readonly flags: SharedArrayBuffer;
}

export const stopAt = 0;
export const answerAt = 1;
export const notAnswered = 0;
export const saysNo = 1;
export const saysYes = 2;

export type FromThread =
  | { readonly kind: 'is registered?'; readonly benchId: BenchId }
  | { readonly kind: 'done'; readonly result: PictureReading | Refusal }
  | { readonly kind: 'failed'; readonly why: string };
