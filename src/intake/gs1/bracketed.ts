/** GS1 element strings as they stand in human readable form under a symbol: `(01)09506000134352(21)AB-7`. */
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { shown } from '../control-characters.ts';
import { applicationIdentifier, predefinedAiLength, predefinedLengthOf } from './application-identifiers.ts';
import { faultOfElement, type Gs1Element, withoutRepeats } from './element.ts';

/** True of a text that sets out with a known AI in parentheses; `(555) 0101` is something else. */
export const looksBracketed = (text: string): boolean => {
  const [, ai = ''] = /^\((\d{2,4})\)/.exec(text) ?? [];
  return applicationIdentifier(ai) !== undefined;
};

/** Spaces around the data do not count. A parenthesis that belongs to the data may be written `\(`. */
export const readBracketed = (text: string, currentYear: number): readonly Gs1Element[] | Refusal => {
  const elements: Gs1Element[] = [];
  for (const [, ai = '', written = ''] of text.matchAll(/\((\d{2,4})\)((?:\\\(|(?!\(\d{2,4}\)).)*)/gs)) {
    const element = { ai, value: written.trim().replaceAll('\\(', '(') };
    const fault = faultOfUnassigned(element) ?? faultOfElement(element, currentYear, false);
    if (fault !== undefined) return fault;
    elements.push(element);
  }
  const found = withoutRepeats(elements);
  return isRefusal(found) || found.length > 0 ? found : refusal('gs1-empty');
};

/** An AI that is not assigned is stepped over where its length is predefined. */
const faultOfUnassigned = ({ ai, value }: Gs1Element): Refusal | undefined => {
  if (applicationIdentifier(ai) !== undefined) return undefined;
  const length = predefinedLengthOf(ai);
  if (length === undefined || predefinedAiLength(ai) !== ai.length) return refusal('gs1-ai-unknown', { ai });
  const least = length - ai.length;
  if (value.length === least) return undefined;
  return value.length < least
    ? refusal('gs1-too-short', { ai, value: shown(value), length: value.length, least })
    : refusal('gs1-too-long', { ai, value: shown(value), length: value.length, most: least });
};
