/** The commands that this window has given and the station has not yet answered. */

const underWay = new Set<Promise<unknown>>();

/** Remembers a command until it is answered. */
export const whileUnderWay = async <Answer>(command: Promise<Answer>): Promise<Answer> => {
  underWay.add(command);
  try {
    return await command;
  } finally {
    underWay.delete(command);
  }
};

const pause = (ms: number): Promise<void> => new Promise((resolve) => window.setTimeout(resolve, ms));

/**
 * Resolves when every command is answered and the screens have taken the answers in, or after `mostMs`: a long command must not
 * keep a scanner from being heard.
 */
export const settledCommands = async (mostMs: number): Promise<void> => {
  const limit = pause(mostMs);
  let isLate = false;
  void limit.then(() => {
    isLate = true;
  });
  while (underWay.size > 0 && !isLate) {
    await Promise.race([Promise.allSettled(underWay), limit]);
    await pause(0);
    await pause(0);
  }
};
