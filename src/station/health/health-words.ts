/** The words of findings, in the languages of the station. */
import english from '../../../assets/messages/en/health.json' with { type: 'json' };
import spanish from '../../../assets/messages/es/health.json' with { type: 'json' };
import {
  type Finding,
  type HealthSubject,
  shownValues,
  type WordedFinding,
} from '../../domain/health/finding.ts';
import type { Language } from '../../domain/message.ts';
import { catalogueOf } from '../catalogue.ts';

const catalogues = { en: english, es: spanish } as const;
const said = catalogueOf(catalogues);

export const wordFindingIn =
  (language: Language) =>
  (found: Finding): WordedFinding => {
    const say = (part: 'found' | 'todo'): string =>
      said(`${part}.${found.says}`, language, shownValues(found.values));
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
