/** Which key of the keyboard does what a symbol of the command sheet does. */
import type { CommandName } from '../../../src/domain/command-symbol.ts';

/** The letters that stand on the buttons; the same in every language, as they are on the command sheet. */
export const letterOf = {
  good: 'G',
  defect: 'D',
  next: 'N',
  back: 'B',
  confirm: '⏎',
  cancel: 'Esc',
  picture: 'P',
} as const;

/** The command of a key, `KeyboardEvent.key`; digits come through the scan listener, which tells them from a scan. */
export const commandOfKey = (key: string): CommandName | undefined => {
  switch (key.length === 1 ? key.toUpperCase() : key) {
    case 'G':
      return 'good';
    case 'D':
      return 'defect';
    case 'N':
      return 'next';
    case 'B':
      return 'back';
    case 'P':
      return 'picture';
    case 'Enter':
      return 'confirm';
    case 'Escape':
      return 'cancel';
    case '.':
    case ',':
      return 'point';
    case 'Backspace':
      return 'erase';
    default:
      return undefined;
  }
};

/** A key that a scanner may send as the first character of a scan; it counts only when no other key follows at once. */
export const mayBeginScan = (key: string): boolean => key.length === 1;

/** Where the focus is when a key is struck. */
export type FocusPlace = 'page' | 'control' | 'digit field' | 'text field' | 'dialog';

/** Whether a command key struck there is meant for the walk: a text field keeps its letters, a button its Enter. */
export const reachesWalk = (command: CommandName, focus: FocusPlace): boolean => {
  switch (focus) {
    case 'page':
      return true;
    case 'control':
      return command !== 'confirm';
    case 'digit field':
      return command === 'next' || command === 'back' || command === 'cancel';
    case 'text field':
      return command === 'cancel';
    case 'dialog':
      return false;
  }
};
