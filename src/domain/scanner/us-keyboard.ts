/**
 * Which character a key writes on the US layout, by the place of the key.
 *
 * Source: the `code` values of UI Events KeyboardEvent code Values (W3C), section 3.1, and the characters that USB HID Usage
 * Tables 1.4, page 0x07, gives those places on the US layout.
 */

const rows: Readonly<Record<string, string>> = {
  Backquote: '`~',
  Minus: '-_',
  Equal: '=+',
  BracketLeft: '[{',
  BracketRight: ']}',
  Backslash: '\\|',
  Semicolon: ';:',
  Quote: `'"`,
  Comma: ',<',
  Period: '.>',
  Slash: '/?',
  Space: '  ',
};

const shiftedDigits = ')!@#$%^&*(';

/** `code` as in `KeyboardEvent.code`; `undefined` for a key that writes nothing. */
export const usCharacter = (code: string, shift: boolean): string | undefined => {
  const letter = /^Key([A-Z])$/.exec(code)?.[1];
  if (letter !== undefined) return shift ? letter : letter.toLowerCase();
  const digit = /^Digit(\d)$/.exec(code)?.[1];
  if (digit !== undefined) return shift ? shiftedDigits[Number(digit)] : digit;
  return rows[code]?.[shift ? 1 : 0];
};

/**
 * The control character that a scanner sends as Ctrl and a key, by the place of the key on the US layout: GS of a GS1 code as
 * Ctrl+], RS as Ctrl+^, EOT as Ctrl+D (ASCII caret notation: the character 64 below).
 */
export const controlCharacter = (code: string, shift: boolean): string | undefined => {
  const written = code === 'Digit6' ? '^' : code === 'Minus' ? '_' : usCharacter(code, shift)?.toUpperCase();
  const value = written?.codePointAt(0);
  return value === undefined || value < 64 || value > 95 ? undefined : String.fromCodePoint(value - 64);
};
