/** The form in which texts of the register are ordered, compared and searched. */

/** Letter case and surrounding space do not matter. */
export const compareKey = (text: string): string => text.trim().normalize('NFC').toLowerCase();

/** Letters and digits alone: case, accents, hyphens, spaces and other marks do not matter. */
export const searchKey = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/** One key after another with a space between, so that no word is found across two of them. */
export const searchKeys = (texts: readonly string[]): string => texts.map(searchKey).join(' ');

/** The words of a search, each of which must occur. */
export const searchWords = (search: string): readonly string[] =>
  search
    .split(/\s+/)
    .map(searchKey)
    .filter((word) => word !== '');
