/** The words printed on tags, in each language of the station. */
import en from '../../assets/messages/en/tags.json' with { type: 'json' };
import es from '../../assets/messages/es/tags.json' with { type: 'json' };
import type { Language, Message } from '../domain/message.ts';

export type Word = keyof typeof en;

/** A part of a tag that a stock can be too small for; `part-…` of the word list names it to a person. */
export type TagPart = Word extends infer Key ? (Key extends `part-${infer Part}` ? Part : never) : never;

const catalogue: Record<Language, Record<Word, string>> = { en, es };

export const word = (key: Word): Message => ({
  en: catalogue.en[key],
  es: catalogue.es[key],
});

/** The message in each language of the tag, in its order, without repeating words that are alike. */
export const inEach = (message: Message, languages: readonly Language[]): readonly string[] => [
  ...new Set(languages.map((language) => message[language])),
];

/** The languages of the tag in one line: `Tag / Etiqueta`. */
export const inOneLine = (message: Message, languages: readonly Language[]): string =>
  inEach(message, languages).join(' / ');
