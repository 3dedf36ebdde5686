/** What the digits of the command sheet do on a screen, and *confirm*, *back* and others that it names. */
import type { CommandName } from '../../src/domain/command-symbol.ts';
import { useScanHandler } from './scan.ts';

/** The digit 1 does the first of the acts; what is `undefined` is left to whoever is asked next. */
export const useNumberedActs = (
  acts: readonly ((() => void) | undefined)[],
  named: Partial<Record<CommandName, (() => void) | undefined>> = {},
): void => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    const act = named[meaning.command] ?? acts[Number(meaning.command) - 1];
    act?.();
    return act !== undefined;
  });
};
