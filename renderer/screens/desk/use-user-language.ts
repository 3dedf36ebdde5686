/** The desk speaks the language of whoever is there, as the record knows it or as they choose, and the window's own for the next. */
import { useCallback, useEffect, useRef } from 'react';
import type { Language } from '../../../src/domain/message.ts';
import { currentLanguage, speakMeanwhile, windowLanguage } from '../../i18n/catalogue.ts';
import type { DeskUser } from './desk-state.ts';

/** What is returned changes to the other language, for whoever is there or comes next. */
export const useUserLanguage = (user: DeskUser | undefined): (() => void) => {
  const chosen = useRef<Language>(undefined);
  const personId = user?.personId;
  const known = user?.language;
  useEffect(() => {
    if (personId !== undefined) speakMeanwhile(chosen.current ?? known ?? windowLanguage());
    return () => {
      if (personId === undefined) return;
      chosen.current = undefined;
      speakMeanwhile(windowLanguage());
    };
  }, [personId, known]);
  useEffect(() => () => speakMeanwhile(windowLanguage()), []);
  return useCallback(() => {
    chosen.current = currentLanguage() === 'en' ? 'es' : 'en';
    speakMeanwhile(chosen.current);
  }, []);
};
