/** Waiting between two questions, until it is time or the caller has had enough. */
import { setTimeout as sleep } from 'node:timers/promises';

export const pause = async (milliseconds: number, signal: AbortSignal | undefined): Promise<void> => {
  try {
    await sleep(milliseconds, undefined, signal === undefined ? {} : { signal });
  } catch (error) {
    if (signal?.aborted !== true) throw error;
  }
};
