/** A PIN as it is given by the digit symbols of the command sheet or the digits on the screen. */
import type { CommandName } from '../../../src/domain/command-symbol.ts';

/** The PIN after a command; `undefined` where the command is not one of a PIN. Cancel begins anew. */
export const pinAfter = (pin: string, command: CommandName): string | undefined => {
  if (/^\d$/.test(command)) return `${pin}${command}`.slice(0, 40);
  if (command === 'erase') return pin.slice(0, -1);
  return command === 'cancel' ? '' : undefined;
};
