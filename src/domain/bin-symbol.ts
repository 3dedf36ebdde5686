/**
 * What the symbol of a bin label says: that it is the label of a place where held devices are kept, and which.
 *
 * One sign before the code, so that the symbol stays small: the full stop has the same key on the US and the Spanish
 * keyboard, and neither a bench ID nor a command symbol holds one.
 */

const sign = '.';

export const binSymbolText = (code: string): string => `${sign}${code}`;

/** The code of the place; `undefined` for any other text. */
export const readBinSymbol = (text: string): string | undefined =>
  /^\.([A-Z0-9]{1,12})$/.exec(text.toUpperCase())?.[1];
