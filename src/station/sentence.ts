/** Sentences for people, from the one message catalogue, in the language of the person. */
import { z } from 'zod';
import englishErrors from '../../assets/messages/en/errors.json' with { type: 'json' };
import englishTerms from '../../assets/messages/en/terms.json' with { type: 'json' };
import spanishErrors from '../../assets/messages/es/errors.json' with { type: 'json' };
import spanishTerms from '../../assets/messages/es/terms.json' with { type: 'json' };
import { formatBenchId, parseBenchId } from '../domain/bench-id/bench-id.ts';
import type { Language } from '../domain/message.ts';
import type { Refusal, RefusalValue } from '../domain/refusal.ts';
import { catalogueOf } from './catalogue.ts';

const catalogue = catalogueOf({ en: englishErrors, es: spanishErrors });

/** The domain's own words, such as a role or a standing, as a person reads them. */
const terms: Record<Language, ReadonlyMap<string, string>> = {
  en: new Map(Object.entries(englishTerms)),
  es: new Map(Object.entries(spanishTerms)),
};

/** The sentence of a refusal: what is wrong and what to do. A value that is one of the domain's words is put in the language. */
export const sentenceOf = (refused: Refusal, language: Language): string => {
  const words = Object.entries(refused.values).map(([name, value]) => [
    name,
    name === 'benchId' ? shownBenchId(String(value)) : termIn(value, language),
  ]);
  return catalogue(refused.code, language, Object.fromEntries(words));
};

const shownBenchId = (text: string): string => {
  const parsed = parseBenchId(text);
  return parsed.kind === 'exact' ? formatBenchId(parsed.id) : text;
};

const termIn = (value: RefusalValue, language: Language): string | number => {
  if (typeof value === 'number') return value;
  if (typeof value === 'object') return value[language];
  return value
    .split(', ')
    .map((word) => terms[language].get(word) ?? word)
    .join(', ');
};

const localeError = { en: z.locales.en().localeError, es: z.locales.es().localeError };

/** What is wrong with an input, in the language of the person; the issue has the input with it (`reportInput`). */
export const issueText = (issue: z.core.$ZodIssue, language: Language): string => {
  if (issue.code === 'invalid_type' && issue.input === undefined)
    return catalogue('input-is-missing', language);
  const text = localeError[language]({ ...issue, input: issue.input } as z.core.$ZodRawIssue);
  return typeof text === 'string' ? text : (text?.message ?? issue.message);
};
