/** What a scanner typed, key by key, and the texts that it may have meant. */
import { z } from 'zod';
import { usCharacter } from './us-keyboard.ts';

export const keystrokeSchema = z.object({
  /** The character that the layout of this computer made of it; empty where it made none, as a dead key. */
  text: z.string().max(4),
  /** The place of the key, `KeyboardEvent.code`; empty where it is not known. */
  code: z.string().max(40),
  shift: z.boolean(),
  /** Whether Caps Lock was on. */
  capsLock: z.boolean(),
  /** Milliseconds on any steady clock. */
  at: z.number(),
});
export type Keystroke = z.infer<typeof keystrokeSchema>;

export const keyboardFaults = ['caps lock', 'layout', 'caps lock and layout'] as const;
export type KeyboardFault = (typeof keyboardFaults)[number];

export interface KeyboardReading {
  readonly text: string;
  /** What must have gone wrong on the way if that is the text. */
  readonly fault?: KeyboardFault;
}

const isLetter = (text: string): boolean => text.toLowerCase() !== text.toUpperCase();

const swapCase = (text: string): string =>
  text === text.toUpperCase() ? text.toLowerCase() : text.toUpperCase();

const asTyped = (keys: readonly Keystroke[], undoCapsLock: boolean): string =>
  keys
    .map(({ text, capsLock }) => (undoCapsLock && capsLock && isLetter(text) ? swapCase(text) : text))
    .join('');

/** As the US layout would have it, by the places of the keys; `undefined` where a place is not known. */
const atUsPlaces = (keys: readonly Keystroke[], withCapsLock: boolean): string | undefined => {
  const texts = keys.map(({ text, code, shift, capsLock }) => {
    if (text < ' ' && text !== '') return text;
    const written = usCharacter(code, shift);
    return written !== undefined && withCapsLock && capsLock && isLetter(written)
      ? swapCase(written)
      : written;
  });
  return texts.includes(undefined) ? undefined : texts.join('');
};

/**
 * The texts that the keys may stand for, the one that this computer made of them first: then with Caps Lock undone, then as
 * a scanner set to the US layout meant them. Each text once. `usesUsPlaces` puts the US layout first, for a scanner that is
 * known to be set so; it is then no fault.
 */
export const readKeystrokes = (
  keys: readonly Keystroke[],
  usesUsPlaces = false,
): readonly KeyboardReading[] => {
  const typed: KeyboardReading[] = [
    { text: asTyped(keys, false) },
    { text: asTyped(keys, true), fault: 'caps lock' },
  ];
  const us = atUsPlaces(keys, false);
  const usCaps = atUsPlaces(keys, true);
  const placed = [
    reading(us, us === usCaps ? 'layout' : 'caps lock and layout', usesUsPlaces),
    reading(usCaps, 'layout', usesUsPlaces),
  ].flat();
  const all = usesUsPlaces ? [...placed, ...typed] : [...typed, ...placed];
  return all.filter(({ text }, index) => all.findIndex((other) => other.text === text) === index);
};

const reading = (
  text: string | undefined,
  fault: KeyboardFault,
  isMeant: boolean,
): readonly KeyboardReading[] => {
  if (text === undefined) return [];
  return [isMeant ? { text } : { text, fault }];
};
