/** What a command symbol, or the key that stands for it, means to an answer in the making. */
import { type CommandName, placeOf } from '../../../src/domain/command-symbol.ts';
import type { DraftInput } from './answer-draft.ts';

/** `undefined` for the commands that move through the walk, take a picture or leave for another screen instead of answering. */
export const inputOfCommand = (command: CommandName): DraftInput | undefined => {
  if (placeOf(command) !== undefined) return undefined;
  switch (command) {
    case 'next':
    case 'back':
    case 'picture':
    case 'help':
      return undefined;
    case 'good':
    case 'defect':
    case 'confirm':
    case 'cancel':
    case 'point':
    case 'erase':
      return { kind: command };
    default:
      return { kind: 'digit', digit: Number(command) };
  }
};
