/** The language of the window, for whatever must be asked for anew when it changes. */
import { useTranslation } from 'react-i18next';
import type { Language } from '../../src/domain/message.ts';
import { currentLanguage } from './catalogue.ts';

export const useLanguage = (): Language => {
  useTranslation('screens');
  return currentLanguage();
};
