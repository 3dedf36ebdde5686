/**
 * A scanner that types for one keyboard layout on a computer with another.
 *
 * Source of both layouts: xkeyboard-config 2.35, symbols/us (basic) and symbols/es (basic over latin type4); `Dead` where a dead
 * key writes nothing by itself. The places are `code` values of UI Events KeyboardEvent code Values (W3C).
 */
export type LayoutName = 'us' | 'es';

type Level = readonly [plain: string, shifted: string];

const letters: readonly (readonly [string, Level])[] = [...'abcdefghijklmnopqrstuvwxyz'].map((letter) => [
  `Key${letter.toUpperCase()}`,
  [letter, letter.toUpperCase()],
]);

const layouts: Readonly<Record<LayoutName, ReadonlyMap<string, Level>>> = {
  us: new Map<string, Level>([
    ...letters,
    ['Space', [' ', ' ']],
    ['Backquote', ['`', '~']],
    ['Digit1', ['1', '!']],
    ['Digit2', ['2', '@']],
    ['Digit3', ['3', '#']],
    ['Digit4', ['4', '$']],
    ['Digit5', ['5', '%']],
    ['Digit6', ['6', '^']],
    ['Digit7', ['7', '&']],
    ['Digit8', ['8', '*']],
    ['Digit9', ['9', '(']],
    ['Digit0', ['0', ')']],
    ['Minus', ['-', '_']],
    ['Equal', ['=', '+']],
    ['BracketLeft', ['[', '{']],
    ['BracketRight', [']', '}']],
    ['Semicolon', [';', ':']],
    ['Quote', ["'", '"']],
    ['Backslash', ['\\', '|']],
    ['Comma', [',', '<']],
    ['Period', ['.', '>']],
    ['Slash', ['/', '?']],
  ]),
  es: new Map<string, Level>([
    ...letters,
    ['Space', [' ', ' ']],
    ['Backquote', ['º', 'ª']],
    ['Digit1', ['1', '!']],
    ['Digit2', ['2', '"']],
    ['Digit3', ['3', '·']],
    ['Digit4', ['4', '$']],
    ['Digit5', ['5', '%']],
    ['Digit6', ['6', '&']],
    ['Digit7', ['7', '/']],
    ['Digit8', ['8', '(']],
    ['Digit9', ['9', ')']],
    ['Digit0', ['0', '=']],
    ['Minus', ["'", '?']],
    ['Equal', ['¡', '¿']],
    ['BracketLeft', ['Dead', 'Dead']],
    ['BracketRight', ['+', '*']],
    ['Semicolon', ['ñ', 'Ñ']],
    ['Quote', ['Dead', 'Dead']],
    ['Backslash', ['ç', 'Ç']],
    ['Comma', [',', ';']],
    ['Period', ['.', ':']],
    ['Slash', ['-', '_']],
  ]),
};

export interface TypedKey {
  /** As `KeyboardEvent.key` and `.code`. */
  readonly key: string;
  readonly code: string;
  readonly shift: boolean;
  readonly capsLock: boolean;
}

export interface KeyboardSetting {
  /** The layout that the scanner is set to, and that of the computer. */
  readonly scanner: LayoutName;
  readonly computer: LayoutName;
  readonly capsLock?: boolean;
}

/** The keys that the scanner strikes for a text, and what the computer makes of each. */
export const typedKeys = (
  text: string,
  { scanner, computer, capsLock = false }: KeyboardSetting,
): readonly TypedKey[] =>
  [...text].map((character) => {
    const place = [...layouts[scanner]].find(([, level]) => level.includes(character));
    if (place === undefined) throw new Error(`No key for ${character} on the layout ${scanner}.`);
    const [code, level] = place;
    const shift = level[0] !== character;
    const written = layouts[computer].get(code)!;
    const followsCapsLock = written[0].toUpperCase() === written[1] && written[0] !== written[1];
    return { key: written[shift !== (capsLock && followsCapsLock) ? 1 : 0], code, shift, capsLock };
  });
