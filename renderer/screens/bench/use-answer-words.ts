/** An answer in words, in the language of the window. */
import { useCallback } from 'react';
import type { Answer, DiameterReading, Finding } from '../../../src/domain/answer.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import { useText } from '../../i18n/text.ts';

/** `Kink, 3.2 m`. */
export const useFindingWords = (): ((check: Check, finding: Finding) => string) => {
  const { inLanguage, lengthText } = useText();
  return useCallback(
    (check, { defect, positionM }) => {
      const known = check.kind === 'condition' ? check.defects.find(({ key }) => key === defect) : undefined;
      const label = known === undefined ? defect : inLanguage(known.label);
      return positionM === undefined ? label : `${label}, ${lengthText(positionM)}`;
    },
    [inLanguage, lengthText],
  );
};

/** `3 readings, the least 4.7 mm`. */
const useReadingWords = (): ((readings: readonly DiameterReading[]) => string) => {
  const { t, diameterText } = useText();
  return useCallback(
    (readings) =>
      readings.length === 0
        ? t('evidence:diameter.givenNone')
        : t('evidence:diameter.given', {
            count: readings.length,
            diameter: diameterText(Math.min(...readings.map(({ diameterMm }) => diameterMm))),
          }),
    [t, diameterText],
  );
};

/** An answer in as few words as say it, each finding with its remark. */
export const useBareAnswerWords = (): ((check: Check, answer: Answer) => string) => {
  const { t, inLanguage, lengthText } = useText();
  const findingWords = useFindingWords();
  const readingWords = useReadingWords();
  return useCallback(
    (check, answer) => {
      switch (answer.kind) {
        case 'good': {
          const good = check.kind === 'condition' ? check.answers?.good : undefined;
          return good === undefined ? t('walk:check.good') : inLanguage(good);
        }
        case 'marking':
          return t(`walk:marking.${answer.state}`);
        case 'length':
          return lengthText(answer.confirmedM);
        case 'diameters':
          return readingWords(answer.readings);
        case 'defects':
          return answer.findings
            .map((finding) => [findingWords(check, finding), finding.note].filter(Boolean).join(': '))
            .join('; ');
      }
    },
    [t, inLanguage, lengthText, findingWords, readingWords],
  );
};

/** The same for the walk, in which remarks have their own place. */
export const useAnswerWords = (): ((check: Check, answer: Answer) => string) => {
  const { t, lengthText } = useText();
  const findingWords = useFindingWords();
  const bareWords = useBareAnswerWords();
  return useCallback(
    (check, answer) => {
      switch (answer.kind) {
        case 'length':
          return t('walk:given.length', { length: lengthText(answer.confirmedM) });
        case 'defects':
          return t('walk:given.good', {
            answer: answer.findings.map((finding) => findingWords(check, finding)).join('; '),
          });
        case 'good':
        case 'marking':
        case 'diameters':
          return t('walk:given.good', { answer: bareWords(check, answer) });
      }
    },
    [t, lengthText, findingWords, bareWords],
  );
};
