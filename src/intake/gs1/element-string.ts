/** GS1 element strings as a scanner sends them: elements one after another, FNC1 as the group separator where it is needed. */
import { hasGs1CheckDigit } from '../../domain/marking-data.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { GS, shown } from '../control-characters.ts';
import {
  applicationIdentifier,
  leadingAi,
  predefinedAiLength,
  predefinedLengthOf,
} from './application-identifiers.ts';
import { faultOfElement, type Gs1Element, withoutRepeats } from './element.ts';
import { readSixDigitDate } from './six-digit-date.ts';

/** A separator may stand after an element of predefined length too, and before the first (GS1 General Specifications §7.8). */
export const readElementString = (text: string, currentYear: number): readonly Gs1Element[] | Refusal => {
  const elements: Gs1Element[] = [];
  let rest = text;
  while (rest !== '') {
    if (rest.startsWith(GS)) {
      rest = rest.slice(1);
      continue;
    }
    const read = nextElement(rest);
    if (isRefusal(read)) return read;
    const { element, isOpenEnded } = read;
    const fault =
      faultOfElement(element, currentYear, isOpenEnded) ?? lostSeparator(element, isOpenEnded, elements);
    if (fault !== undefined) return fault;
    elements.push(element);
    rest = rest.slice(element.ai.length + element.value.length);
  }
  return elements.length === 0 ? refusal('gs1-empty') : withoutRepeats(elements);
};

const nextElement = (
  rest: string,
): { readonly element: Gs1Element; readonly isOpenEnded: boolean } | Refusal => {
  const length = predefinedLengthOf(rest);
  const end = rest.indexOf(GS);
  const untilSeparator = end < 0 ? rest : rest.slice(0, end);
  const known = leadingAi(untilSeparator);
  if (length !== undefined) {
    const whole = untilSeparator.slice(0, length);
    const ai = known?.ai ?? whole.slice(0, predefinedAiLength(whole));
    const value = whole.slice(ai.length);
    if (whole.length < length)
      return refusal('gs1-too-short', {
        ai,
        value: shown(value),
        length: value.length,
        least: length - ai.length,
      });
    return { element: { ai, value }, isOpenEnded: false };
  }
  if (known === undefined) return refusal('gs1-ai-unknown', { ai: shown(untilSeparator.slice(0, 4)) });
  const isOpenEnded = end < 0;
  return { element: { ai: known.ai, value: untilSeparator.slice(known.ai.length) }, isOpenEnded };
};

/**
 * A GTIN or a GRAI with its right check digit inside the data of another element, where the text has had none yet, is a new
 * element whose separator was lost.
 */
const lostSeparator = (
  { ai, value }: Gs1Element,
  isOpenEnded: boolean,
  before: readonly Gs1Element[],
): Refusal | undefined => {
  const format = applicationIdentifier(ai);
  if (!isOpenEnded || format === undefined || format.least === format.most) return undefined;
  const has = (wanted: string) => before.some((element) => element.ai === wanted);
  for (const [, inside = '', digits = ''] of value.slice(1).matchAll(/(?=(01|8003(?=0))(\d{14}))/g)) {
    if (!has(inside) && Number(digits) > 0 && hasGs1CheckDigit(digits))
      return refusal('gs1-separator-lost', { ai, most: format.most });
  }
  return undefined;
};

/**
 * True where the last element may hold another one whose separator was lost, which cannot be told for certain: no separator
 * stands in the text, and the data ends in a date with its AI, or it is a lot that holds AI 21 while no serial number came.
 */
export const separatorsMayBeLost = (
  text: string,
  elements: readonly Gs1Element[],
  currentYear: number,
): boolean => {
  const last = elements.at(-1);
  if (last === undefined || text.slice(1).includes(GS)) return false;
  const format = applicationIdentifier(last.ai);
  if (format === undefined || format.least === format.most) return false;
  const [, date] = /.1[1-7](\d{6})$/.exec(last.value) ?? [];
  if (date !== undefined && readSixDigitDate(date, currentYear) !== undefined) return true;
  return last.ai === '10' && /.21./.test(last.value) && elements.every(({ ai }) => ai !== '21');
};
