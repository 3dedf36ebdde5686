/** One GS1 element, an application identifier with its data, held against the format of the application identifier. */
import { gs1CheckDigit, hasGs1CheckDigit } from '../../domain/marking-data.ts';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import { shown } from '../control-characters.ts';
import { applicationIdentifier, foreignCharacter } from './application-identifiers.ts';
import { readSixDigitDate } from './six-digit-date.ts';

export interface Gs1Element {
  readonly ai: string;
  readonly value: string;
}

/**
 * What is wrong with the data of an element, if anything. `isOpenEnded`: neither a separator nor the format ended it, so that
 * data that is too long may be two elements without the separator between them.
 */
export const faultOfElement = (
  { ai, value }: Gs1Element,
  currentYear: number,
  isOpenEnded: boolean,
): Refusal | undefined => {
  const format = applicationIdentifier(ai);
  const values = () => ({ ai, value: shown(value) });
  if (format === undefined) {
    const foreign = foreignCharacter(value, 'X');
    return foreign === undefined
      ? undefined
      : refusal('gs1-character', { ...values(), character: shown(foreign) });
  }
  const { least, most } = format;
  if (value.length < least) return refusal('gs1-too-short', { ...values(), length: value.length, least });
  if (value.length > most && isOpenEnded) return refusal('gs1-separator-lost', { ai, most });
  if (value.length > most) return refusal('gs1-too-long', { ...values(), length: value.length, most });
  let start = 0;
  for (const { kind, most: width, endsInCheckDigit } of format.parts) {
    const text = value.slice(start, start + width);
    start += width;
    const foreign = foreignCharacter(text, kind);
    if (foreign !== undefined) return refusal('gs1-character', { ...values(), character: shown(foreign) });
    if (endsInCheckDigit && !hasGs1CheckDigit(text)) {
      return refusal('gs1-check-digit', {
        ...values(),
        is: text.slice(-1),
        should: gs1CheckDigit(text.slice(0, -1)),
      });
    }
    if (kind === 'D' && readSixDigitDate(text, currentYear) === undefined)
      return refusal('gs1-date', values());
  }
  return ai === '8003' && !value.startsWith('0')
    ? refusal('gs1-character', { ...values(), character: value.slice(0, 1) })
    : undefined;
};

/** The same AI twice with the same data is one element; with other data it is a fault (GS1 General Specifications §4.14). */
export const withoutRepeats = (elements: readonly Gs1Element[]): readonly Gs1Element[] | Refusal => {
  const found = new Map<string, string>();
  for (const { ai, value } of elements) {
    const before = found.get(ai);
    if (before !== undefined && before !== value) {
      return refusal('scan-contradicts-itself', {
        element: `(${ai})`,
        first: shown(before),
        second: shown(value),
      });
    }
    found.set(ai, value);
  }
  return [...found].map(([ai, value]) => ({ ai, value }));
};

/**
 * The one form in which a code is bound to a device, whatever scanner sent it: elements in the order of their AIs, AIs in
 * parentheses. An opening parenthesis of the data is written `\(`, so that no two codes have the same form.
 */
export const canonicalGs1 = (elements: readonly Gs1Element[]): string =>
  [...elements]
    .sort((one, other) => (one.ai < other.ai ? -1 : 1))
    .map(({ ai, value }) => `(${ai})${value.replaceAll('(', '\\(')}`)
    .join('');
