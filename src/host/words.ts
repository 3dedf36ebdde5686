/** What the terminal, the host and the shell say of themselves, in the languages of the station. */
import englishCli from '../../assets/messages/en/cli.json' with { type: 'json' };
import englishShell from '../../assets/messages/en/shell.json' with { type: 'json' };
import spanishCli from '../../assets/messages/es/cli.json' with { type: 'json' };
import spanishShell from '../../assets/messages/es/shell.json' with { type: 'json' };
import { type Language, languages } from '../domain/message.ts';
import { catalogueOf, type Values } from '../station/catalogue.ts';

const english = { ...englishCli, ...englishShell };
const spanish = { ...spanishCli, ...spanishShell };

export type WordKey = keyof typeof english;
export type Words = (key: WordKey, values?: Values) => string;

const catalogue = catalogueOf({ en: english, es: spanish });

export const wordsIn =
  (language: Language): Words =>
  (key, values) =>
    catalogue(key, language, values);

/** The language that a locale such as `es_MX.UTF-8` or `es-MX` asks for; English where the station does not have it. */
export const languageOfLocale = (locale: string): Language => {
  const asked = locale.slice(0, 2).toLowerCase();
  return languages.find((language) => language === asked) ?? 'en';
};

/** POSIX locale variables in their order of precedence, then what the operating system is set to. */
export const languageOfEnvironment = (environment: NodeJS.ProcessEnv): Language => {
  const set = [environment.LC_ALL, environment.LC_MESSAGES, environment.LANG].find((value) => value);
  return languageOfLocale(set ?? new Intl.DateTimeFormat().resolvedOptions().locale);
};
