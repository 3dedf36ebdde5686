/** What the station says of a manufacturer's notice: why a device is meant, what is odd about the notice, what the tag says. */
import english from '../../../assets/messages/en/notices.json' with { type: 'json' };
import spanish from '../../../assets/messages/es/notices.json' with { type: 'json' };
import type { Language, Message } from '../../domain/message.ts';
import type { NoticeText } from '../../domain/recall/notice.ts';
import type { RecallMatch } from '../../domain/recall/recall-match.ts';
import { catalogueOf } from '../catalogue.ts';

const said = catalogueOf({ en: english, es: spanish });

/** The sentence on the tag of a device that is held for a notice. */
export const holdSentence = ({ manufacturer, reference }: NoticeText, { level }: RecallMatch): Message => {
  const key = level === 'certain' ? 'hold-certain' : 'hold-possible';
  return {
    en: said(key, 'en', { manufacturer, reference }),
    es: said(key, 'es', { manufacturer, reference }),
  };
};

export const becauseOf = ({ grounds }: RecallMatch, language: Language): string =>
  grounds.map((ground) => said(`ground.${ground}`, language)).join(' ');

export type NoticeWarning =
  | { readonly key: 'maker-unknown'; readonly manufacturer: string; readonly makers: string }
  | { readonly key: 'model-unknown'; readonly model: string }
  | { readonly key: 'serials-unclear'; readonly serials: string };

export const warningText = ({ key, ...values }: NoticeWarning, language: Language): string =>
  said(`warning.${key}`, language, values);
