/** The words of findings, in the languages of the station. */
import { createInstance } from 'i18next';
import english from '../../../assets/messages/en/health.json' with { type: 'json' };
import spanish from '../../../assets/messages/es/health.json' with { type: 'json' };
import {
  type Finding,
  type HealthSubject,
  shownValues,
  type WordedFinding,
} from '../../domain/health/finding.ts';
import type { Language } from '../../domain/message.ts';

const catalogue = createInstance();
await catalogue.init({
  resources: { en: { health: english }, es: { health: spanish } },
  defaultNS: 'health',
  fallbackLng: 'en',
  nsSeparator: false,
  interpolation: { escapeValue: false },
});

const catalogues = { en: english, es: spanish } as const;

export const wordFindingIn =
  (language: Language) =>
  (found: Finding): WordedFinding => {
    const say = (part: 'found' | 'todo'): string =>
      String(catalogue.t(`${part}.${found.says}`, { ...shownValues(found.values), lng: language }));
    return {
      ...found,
      found: say('found'),
      ...(found.says in catalogues[language].todo ? { todo: say('todo') } : {}),
    };
  };

export const subjectName = (subject: HealthSubject, language: Language): string =>
  catalogues[language].subject[subject];

export const stateName = (state: Finding['state'], language: Language): string =>
  catalogues[language].state[state];
