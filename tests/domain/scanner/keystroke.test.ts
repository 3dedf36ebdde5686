/** What a scanner meant, from the keys that it struck on a keyboard of another layout, or with Caps Lock on. */
import { describe, expect, test } from 'vitest';
import { type Keystroke, readKeystrokes } from '../../../src/domain/scanner/keystroke.ts';
import { controlCharacter, usCharacter } from '../../../src/domain/scanner/us-keyboard.ts';
import { type KeyboardSetting, typedKeys } from '../../support/keyboards.ts';

const strokes = (text: string, setting: KeyboardSetting): Keystroke[] =>
  typedKeys(text, setting).map(({ key, ...stroke }, index) => ({
    ...stroke,
    text: key === 'Dead' ? '' : key,
    at: index * 5,
  }));

const readings = (text: string, setting: KeyboardSetting) => readKeystrokes(strokes(text, setting));

describe('keys of a scanner', () => {
  test('are read once where scanner and computer have one layout', () => {
    expect(readings('N2-18/1074', { scanner: 'us', computer: 'us' })).toEqual([{ text: 'N2-18/1074' }]);
  });

  test('of the US layout on a Spanish computer turn a hyphen into an apostrophe, which is put right', () => {
    expect(readings('N2-18-1074', { scanner: 'us', computer: 'es' })).toEqual([
      { text: "N2'18'1074" },
      { text: 'N2-18-1074', fault: 'layout' },
    ]);
  });

  test('of the Spanish layout on a Spanish computer stand as they are', () => {
    expect(readings('N2-18/1074', { scanner: 'es', computer: 'es' })[0]).toEqual({ text: 'N2-18/1074' });
  });

  test('that are dead on a Spanish keyboard are brought back', () => {
    const [typed, placed] = readings("[)>'", { scanner: 'us', computer: 'es' });
    expect(typed?.text).toBe('=:');
    expect(placed).toEqual({ text: "[)>'", fault: 'layout' });
  });

  test('with Caps Lock on have their letters turned round, which is put right', () => {
    expect(readings('Hp10-a', { scanner: 'us', computer: 'us', capsLock: true })).toEqual([
      { text: 'hP10-A' },
      { text: 'Hp10-a', fault: 'caps lock' },
    ]);
  });

  test('with both faults are read through both', () => {
    expect(readings('Hp-10', { scanner: 'us', computer: 'es', capsLock: true })).toContainEqual({
      text: 'Hp-10',
      fault: 'caps lock and layout',
    });
  });

  test('of a scanner that is known to mean the US layout are read so first, without fault', () => {
    const [first] = readKeystrokes(strokes('N2-18', { scanner: 'us', computer: 'es' }), true);
    expect(first).toEqual({ text: 'N2-18' });
  });

  test('that came without their place are read as typed only', () => {
    const keys = strokes('A-1', { scanner: 'us', computer: 'es' }).map((key) => ({ ...key, code: '' }));
    expect(readKeystrokes(keys)).toEqual([{ text: "A'1" }]);
  });
});

test('every place of the US layout writes what xkeyboard-config says', () => {
  const characters = [
    ...' !"#$%&\'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~',
  ];
  const keys = typedKeys(characters.join(''), { scanner: 'us', computer: 'us' });
  expect(keys.map(({ code, shift }) => usCharacter(code, shift))).toEqual(characters);
});

/** ASCII caret notation: ^D EOT, ^\ FS, ^] GS, ^^ RS, ^_ US. */
test.each([
  ['KeyD', false, '\u0004'],
  ['Backslash', false, '\u001c'],
  ['BracketRight', false, '\u001d'],
  ['Digit6', true, '\u001e'],
  ['Minus', true, '\u001f'],
  ['Digit1', false, undefined],
])('Ctrl and %s is the separator of that caret notation', (code, shift, character) => {
  expect(controlCharacter(code, shift)).toBe(character);
});
