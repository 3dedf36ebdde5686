/** The characters of a scan that nobody can see: what they are called, and the separators of ISO/IEC 646 among them. */

/** Group separator: ends a GS1 element (for FNC1) and a field of ISO/IEC 15434. */
export const GS = '\x1d';
/** Record separator: ends a format of ISO/IEC 15434. */
export const RS = '\x1e';
/** End of transmission: ends a message of ISO/IEC 15434. */
export const EOT = '\x04';

/** ISO/IEC 646, from 0 to 31. */
const names =
  'NUL SOH STX ETX EOT ENQ ACK BEL BS TAB LF VT FF CR SO SI DLE DC1 DC2 DC3 DC4 NAK SYN ETB CAN EM SUB ESC FS GS RS US'.split(
    ' ',
  );

/** Such as `GS (0x1D)`, or `U+200B`. */
export const nameOfCharacter = (character: string): string => {
  const code = character.codePointAt(0) ?? 0;
  const hex = code.toString(16).toUpperCase();
  const name = code === 127 ? 'DEL' : names[code];
  return name === undefined ? `U+${hex.padStart(4, '0')}` : `${name} (0x${hex.padStart(2, '0')})`;
};

/** Control and format characters, halves of characters, and what Unicode leaves unassigned or private. */
const unseen = /[\p{C}\u2028\u2029\ufffd]/u;
const everyUnseen = new RegExp(unseen, 'gu');

/** The first character that cannot be seen, and where it is, counted from 1; `undefined` where there is none. */
export const firstUnseen = (
  text: string,
): { readonly character: string; readonly position: number } | undefined => {
  const found = unseen.exec(text);
  return found === null ? undefined : { character: found[0], position: found.index + 1 };
};

/** The text with every unseen character as its name in angle brackets, at most `most` characters of it, for a sentence. */
export const shown = (text: string, most = 40): string => {
  const cut = text.length > most ? `${text.slice(0, most - 1)}…` : text;
  return cut.replace(everyUnseen, (character) => `<${nameOfCharacter(character).split(' ')[0]}>`);
};
