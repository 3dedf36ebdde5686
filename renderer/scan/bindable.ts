/** Whether a scanned code can be bound to a device, and a long code cut for a sentence. */
import { longestCode, shortestCode } from '../../src/domain/device.ts';
import type { MarkingData } from '../../src/domain/marking-data.ts';

/** A code that stands on every device of a model never means one of them, and what is too short or too long is no code. */
export const isBindable = (code: string, data: MarkingData | undefined): boolean =>
  code.length >= shortestCode && code.length <= longestCode && data?.names !== 'its model';

export const shortCode = (code: string): string => (code.length > 60 ? `${code.slice(0, 59)}…` : code);
