/** A number as it grows digit by digit, typed, touched or scanned. */
import type { DraftInput } from './answer-draft.ts';

const longestNumber = 6;

/** The text after an input; what is no part of a number leaves it as it is. */
export const typedAfter = (typed: string, input: DraftInput): string => {
  switch (input.kind) {
    case 'digit':
      return typed.length < longestNumber ? `${typed}${input.digit}` : typed;
    case 'point':
      return /[.,]/.test(typed) || typed === '' ? typed : `${typed}.`;
    case 'erase':
      return typed.slice(0, -1);
    case 'typed':
      return input.text.slice(0, longestNumber);
    default:
      return typed;
  }
};
