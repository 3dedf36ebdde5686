/** Waits for the person to end the program from outside: Ctrl-C, a closed terminal, or the system shutting down. */

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Resolves at the first signal; a second one while the program closes ends it at once. */
export const untilInterrupted = (): Promise<void> =>
  new Promise((resolve) => {
    let interrupted = false;
    for (const signal of signals) {
      process.on(signal, () => {
        if (interrupted) process.exit(130);
        interrupted = true;
        resolve();
      });
    }
  });
