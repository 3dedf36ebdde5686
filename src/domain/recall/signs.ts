/** What can be read of a serial number or a name, sign by sign, and which signs are taken for one another. */

/** A letter or digit that was read, or one of the two below. */
export type Sign = string;
/** One character that cannot be read. */
export const unreadable = '?';
/** A run of which not even the number of characters is known. */
export const anyRun = '*';

export const digits = '0123456789';
export const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * Capitals without accents, spaces and punctuation, as in an observation. A letter of another alphabet may be anything here.
 * Nothing read at all is a run.
 */
export const signsOf = (text: string): readonly Sign[] => {
  const signs = Array.from(
    text
      .normalize('NFKD')
      .toUpperCase()
      .replace(/[^\p{L}\p{N}?*]/gu, '')
      .replace(/\*+/g, anyRun),
    (sign) => (/[0-9A-Z?*]/.test(sign) ? sign : unreadable),
  );
  return signs.length === 0 ? [anyRun] : signs;
};

export const isWhole = (signs: readonly Sign[]): boolean =>
  !signs.includes(unreadable) && !signs.includes(anyRun);

/**
 * Letters that are taken for digits, and so count as them where in doubt: O for 0, I and L for 1, as in the bench ID.
 * Common practice, no source.
 */
export const folded = (sign: Sign): Sign => {
  if (sign === 'O') return '0';
  return sign === 'I' || sign === 'L' ? '1' : sign;
};
