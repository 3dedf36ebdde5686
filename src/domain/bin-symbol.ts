/**
 * What the symbol of a bin label says: that it is the label of a place where held devices are kept, and which.
 *
 * Letters and digits only, so that a keyboard scanner types it alike on every keyboard layout. No bench ID begins so, for
 * its alphabet has no I.
 */

const prefix = 'XCI';

export const binSymbolText = (code: string): string => `${prefix}${code}`;

/** The code of the place; `undefined` for any other text. */
export const readBinSymbol = (text: string): string | undefined =>
  new RegExp(`^${prefix}([A-Z0-9]{1,12})$`).exec(text.toUpperCase())?.[1];
