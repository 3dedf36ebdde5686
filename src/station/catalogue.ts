/** Texts of the station in its languages, outside the screens. */
import { createInstance } from 'i18next';
import type { Language } from '../domain/message.ts';

export type Values = Readonly<Record<string, string | number>>;

/** The text of a key with its values put in; a number called `count` chooses between its forms. */
export type Catalogue = (key: string, language: Language, values?: Values) => string;

/** `texts`: in each language a text a key, or texts a key. English stands in for a text that a language lacks. */
export const catalogueOf = (texts: Readonly<Record<Language, object>>): Catalogue => {
  const catalogue = createInstance();
  void catalogue.init({
    initAsync: false,
    resources: { en: { texts: texts.en }, es: { texts: texts.es } },
    defaultNS: 'texts',
    fallbackLng: 'en',
    nsSeparator: false,
    interpolation: { escapeValue: false },
  });
  return (key, language, values) => String(catalogue.t(key, { ...values, lng: language }));
};
