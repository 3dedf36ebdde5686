/** Which readings a sign allows: as it was read, or as loosely as a safe match needs. */
import { anyRun, folded, type Sign, unreadable } from './signs.ts';

/**
 * As the maker writes it, where a character that cannot be read may also be a mark that does not count; or loosely, with any
 * number of zeros in front of a number and letters taken for digits.
 */
export type Writing = 'as given' | 'loosely';

export const isReadAs = (sign: Sign, character: string, writing: Writing): boolean =>
  sign === unreadable ||
  sign === anyRun ||
  sign === character ||
  (writing === 'loosely' && folded(sign) === folded(character));

/** Whether some text is both: what can be read, and what is written with `?` and `*`. */
export const canBeBoth = (signs: readonly Sign[], mask: readonly Sign[], writing: Writing): boolean => {
  const meets = new Uint8Array((signs.length + 1) * (mask.length + 1));
  const at = (sign: number, place: number) => sign * (mask.length + 1) + place;
  meets[at(0, 0)] = 1;
  for (let index = 0; index <= signs.length; index += 1) {
    for (let place = 0; place <= mask.length; place += 1) {
      if (meets[at(index, place)] !== 1) continue;
      const sign = signs[index];
      const wanted = mask[place];
      if (wanted === anyRun) meets[at(index, place + 1)] = 1;
      if (sign === anyRun || (sign === unreadable && writing === 'as given')) meets[at(index + 1, place)] = 1;
      if (sign === undefined || wanted === undefined) continue;
      if (sign !== anyRun && wanted !== anyRun) {
        if (wanted === unreadable || isReadAs(sign, wanted, writing)) meets[at(index + 1, place + 1)] = 1;
      } else if (wanted === anyRun) {
        if (sign !== anyRun) meets[at(index + 1, place)] = 1;
      } else meets[at(index, place + 1)] = 1;
    }
  }
  return meets[at(signs.length, mask.length)] === 1;
};
