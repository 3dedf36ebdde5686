/** The message catalogues of the screens, and the language that the window speaks. */
import i18next from 'i18next';
import { initReactI18next } from 'react-i18next';
import enCamera from '../../assets/messages/en/camera.json';
import enExchange from '../../assets/messages/en/exchange.json';
import enRecords from '../../assets/messages/en/records.json';
import enScreens from '../../assets/messages/en/screens.json';
import enWalk from '../../assets/messages/en/walk.json';
import esCamera from '../../assets/messages/es/camera.json';
import esExchange from '../../assets/messages/es/exchange.json';
import esRecords from '../../assets/messages/es/records.json';
import esScreens from '../../assets/messages/es/screens.json';
import esWalk from '../../assets/messages/es/walk.json';
import { type Language, languages } from '../../src/domain/message.ts';
import { recall, remember } from '../station/remembered.ts';

interface Catalogues {
  readonly camera: typeof enCamera;
  readonly exchange: typeof enExchange;
  readonly records: typeof enRecords;
  readonly screens: typeof enScreens;
  readonly walk: typeof enWalk;
}

type WithoutPlural<Key extends string> = Key extends `${infer Base}_one` | `${infer Base}_other` ? Base : Key;

type KeysIn<Tree> = {
  [Key in keyof Tree & string]: Tree[Key] extends string ? WithoutPlural<Key> : `${Key}.${KeysIn<Tree[Key]>}`;
}[keyof Tree & string];

/** Every key of the English catalogues, as `screens:start.title`. */
export type TextKey = {
  [Namespace in keyof Catalogues & string]: `${Namespace}:${KeysIn<Catalogues[Namespace]>}`;
}[keyof Catalogues & string];

const isLanguage = (text: string | undefined): text is Language =>
  languages.some((language) => language === text);

const firstLanguage = (): Language => {
  const kept = recall('language');
  if (isLanguage(kept)) return kept;
  const preferred = navigator.language.slice(0, 2);
  return isLanguage(preferred) ? preferred : 'en';
};

export const catalogue = i18next.createInstance();

void catalogue.use(initReactI18next).init({
  lng: firstLanguage(),
  fallbackLng: 'en',
  initAsync: false,
  ns: ['screens', 'walk', 'camera', 'exchange', 'records'],
  defaultNS: 'screens',
  resources: {
    en: { screens: enScreens, walk: enWalk, camera: enCamera, exchange: enExchange, records: enRecords },
    es: { screens: esScreens, walk: esWalk, camera: esCamera, exchange: esExchange, records: esRecords },
  },
  interpolation: { escapeValue: false },
});

export const currentLanguage = (): Language => (isLanguage(catalogue.language) ? catalogue.language : 'en');

export const speak = (language: Language): void => {
  remember('language', language);
  document.documentElement.lang = language;
  void catalogue.changeLanguage(language);
};
