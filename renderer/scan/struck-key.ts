/** A keyboard event as the wedge takes it: what the key writes, where it lies, and the control characters of scanners. */
import { controlCharacter } from '../../src/domain/scanner/us-keyboard.ts';
import type { StruckKey } from './wedge.ts';

/** What of a `KeyboardEvent` counts. */
export interface KeyEvent {
  readonly key: string;
  readonly code: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
  readonly timeStamp: number;
  getModifierState(key: string): boolean;
}

const modifiers = new Set(['Shift', 'CapsLock', 'AltGraph', 'Alt', 'Control', 'NumLock', 'Meta']);

/** The separators of data formats: EOT, FS, GS, RS and US of ASCII. */
const separators = new Set(['\u0004', '\u001c', '\u001d', '\u001e', '\u001f']);

export const struckKeyOf = (event: KeyEvent): StruckKey => {
  const { key, code, shiftKey, ctrlKey, altKey, metaKey, timeStamp: at } = event;
  if (modifiers.has(key)) return { kind: 'modifies' };
  const writesByAltGraph = event.getModifierState('AltGraph');
  const capsLock = event.getModifierState('CapsLock');
  if (!writesByAltGraph && ctrlKey && !altKey && !metaKey) {
    const text = controlCharacter(code, shiftKey);
    return text !== undefined && separators.has(text)
      ? { kind: 'writes', stroke: { text, code, shift: shiftKey, capsLock, at } }
      : { kind: 'breaks' };
  }
  if (!writesByAltGraph && (ctrlKey || altKey || metaKey)) return { kind: 'breaks' };
  if (key === 'Enter' || key === 'Tab') return { kind: 'ends', end: key, at };
  if (key !== 'Dead' && [...key].length !== 1) return { kind: 'breaks' };
  return {
    kind: 'writes',
    stroke: {
      text: key === 'Dead' ? '' : key,
      code: writesByAltGraph ? '' : code,
      shift: shiftKey,
      capsLock,
      at,
    },
  };
};

/**
 * The character that Alt and digits of the number pad stand for, as scanners send it that are to work on every keyboard
 * layout: a leading 0 is allowed, a character above 255 is not one of a code (from memory; ASCII and Latin-1 values).
 */
export class AltNumber {
  #digits = '';

  /** True where the key belongs to such a number. */
  press({ key, code, altKey, ctrlKey }: KeyEvent): boolean {
    if (key === 'Alt') this.#digits = '';
    const digit = altKey && !ctrlKey ? /^Numpad(\d)$/.exec(code)?.[1] : undefined;
    if (digit !== undefined) this.#digits += digit;
    return digit !== undefined;
  }

  /** When Alt is let go of: the character; `undefined` where there was no number. */
  release({ key }: Pick<KeyEvent, 'key'>): string | undefined {
    if (key !== 'Alt' || this.#digits === '') return undefined;
    const value = Number(this.#digits);
    this.#digits = '';
    return value > 0 && value < 256 ? String.fromCodePoint(value) : undefined;
  }
}
