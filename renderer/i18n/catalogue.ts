/** The message catalogues of the screens, and the language that the window speaks. */
import i18next from 'i18next';
import { initReactI18next } from 'react-i18next';
import enCamera from '../../assets/messages/en/camera.json';
import enCorrections from '../../assets/messages/en/corrections.json';
import enDesk from '../../assets/messages/en/desk.json';
import enEvidence from '../../assets/messages/en/evidence.json';
import enExchange from '../../assets/messages/en/exchange.json';
import enHealth from '../../assets/messages/en/health.json';
import enHeld from '../../assets/messages/en/held.json';
import enHelp from '../../assets/messages/en/help.json';
import enInsight from '../../assets/messages/en/insight.json';
import enKeeping from '../../assets/messages/en/keeping.json';
import enLedger from '../../assets/messages/en/ledger.json';
import enNotices from '../../assets/messages/en/notices.json';
import enPeople from '../../assets/messages/en/people.json';
import enPlan from '../../assets/messages/en/plan.json';
import enProgram from '../../assets/messages/en/program.json';
import enRecords from '../../assets/messages/en/records.json';
import enSchedule from '../../assets/messages/en/schedule.json';
import enScreens from '../../assets/messages/en/screens.json';
import enTour from '../../assets/messages/en/tour.json';
import enWalk from '../../assets/messages/en/walk.json';
import esCamera from '../../assets/messages/es/camera.json';
import esCorrections from '../../assets/messages/es/corrections.json';
import esDesk from '../../assets/messages/es/desk.json';
import esEvidence from '../../assets/messages/es/evidence.json';
import esExchange from '../../assets/messages/es/exchange.json';
import esHealth from '../../assets/messages/es/health.json';
import esHeld from '../../assets/messages/es/held.json';
import esHelp from '../../assets/messages/es/help.json';
import esInsight from '../../assets/messages/es/insight.json';
import esKeeping from '../../assets/messages/es/keeping.json';
import esLedger from '../../assets/messages/es/ledger.json';
import esNotices from '../../assets/messages/es/notices.json';
import esPeople from '../../assets/messages/es/people.json';
import esPlan from '../../assets/messages/es/plan.json';
import esProgram from '../../assets/messages/es/program.json';
import esRecords from '../../assets/messages/es/records.json';
import esSchedule from '../../assets/messages/es/schedule.json';
import esScreens from '../../assets/messages/es/screens.json';
import esTour from '../../assets/messages/es/tour.json';
import esWalk from '../../assets/messages/es/walk.json';
import { type Language, languages } from '../../src/domain/message.ts';
import { recall, remember } from '../station/remembered.ts';
import { tellLanguage } from '../station/shell-bridge.ts';

interface Catalogues {
  readonly camera: typeof enCamera;
  readonly corrections: typeof enCorrections;
  readonly desk: typeof enDesk;
  readonly evidence: typeof enEvidence;
  readonly exchange: typeof enExchange;
  readonly health: typeof enHealth;
  readonly held: typeof enHeld;
  readonly help: typeof enHelp;
  readonly insight: typeof enInsight;
  readonly keeping: typeof enKeeping;
  readonly ledger: typeof enLedger;
  readonly notices: typeof enNotices;
  readonly people: typeof enPeople;
  readonly plan: typeof enPlan;
  readonly program: typeof enProgram;
  readonly records: typeof enRecords;
  readonly schedule: typeof enSchedule;
  readonly screens: typeof enScreens;
  readonly tour: typeof enTour;
  readonly walk: typeof enWalk;
}

const english: Catalogues = {
  camera: enCamera,
  corrections: enCorrections,
  desk: enDesk,
  evidence: enEvidence,
  exchange: enExchange,
  health: enHealth,
  held: enHeld,
  help: enHelp,
  insight: enInsight,
  keeping: enKeeping,
  ledger: enLedger,
  notices: enNotices,
  people: enPeople,
  plan: enPlan,
  program: enProgram,
  records: enRecords,
  schedule: enSchedule,
  screens: enScreens,
  tour: enTour,
  walk: enWalk,
};
const spanish: Catalogues = {
  camera: esCamera,
  corrections: esCorrections,
  desk: esDesk,
  evidence: esEvidence,
  exchange: esExchange,
  health: esHealth,
  held: esHeld,
  help: esHelp,
  insight: esInsight,
  keeping: esKeeping,
  ledger: esLedger,
  notices: esNotices,
  people: esPeople,
  plan: esPlan,
  program: esProgram,
  records: esRecords,
  schedule: esSchedule,
  screens: esScreens,
  tour: esTour,
  walk: esWalk,
};

/** Every namespace, for those who translate. */
export const namespaces = Object.keys(english);

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

/** The language that the window was set to, whoever stands before it for a moment. */
export const windowLanguage = (): Language => {
  const kept = recall('language');
  if (isLanguage(kept)) return kept;
  const preferred = navigator.language.slice(0, 2);
  return isLanguage(preferred) ? preferred : 'en';
};

export const catalogue = i18next.createInstance();

void catalogue.use(initReactI18next).init({
  lng: windowLanguage(),
  fallbackLng: 'en',
  initAsync: false,
  ns: namespaces,
  defaultNS: 'screens',
  resources: { en: { ...english }, es: { ...spanish } },
  interpolation: { escapeValue: false },
});

export const currentLanguage = (): Language => (isLanguage(catalogue.language) ? catalogue.language : 'en');

/** Sets the language of the window. */
export const speak = (language: Language): void => {
  remember('language', language);
  speakMeanwhile(language);
};

/** For whoever stands before the window; it stays set to the language that it has. */
export const speakMeanwhile = (language: Language): void => {
  document.documentElement.lang = language;
  tellLanguage(language);
  void catalogue.changeLanguage(language);
};
