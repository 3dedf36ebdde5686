/** Sentences for people, from the one message catalogue, in the language of the person. */
import { createInstance } from 'i18next';
import english from '../../assets/messages/en/errors.json' with { type: 'json' };
import spanish from '../../assets/messages/es/errors.json' with { type: 'json' };
import type { Language } from '../domain/message.ts';
import type { Refusal } from '../domain/refusal.ts';

const catalogue = createInstance();
await catalogue.init({
  resources: { en: { errors: english }, es: { errors: spanish } },
  defaultNS: 'errors',
  fallbackLng: 'en',
  keySeparator: false,
  nsSeparator: false,
  interpolation: { escapeValue: false },
});

/** The sentence of a refusal: what is wrong and what to do. */
export const sentenceOf = (refused: Refusal, language: Language): string =>
  catalogue.t(refused.code, { ...refused.values, lng: language });
