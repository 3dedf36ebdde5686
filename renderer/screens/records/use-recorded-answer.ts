/** An answer of the record in words, with the remark of each finding. */
import { useCallback } from 'react';
import type { Answer } from '../../../src/domain/answer.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import { useText } from '../../i18n/text.ts';
import { useFindingWords } from '../bench/use-answer-words.ts';

export interface RecordedAnswer {
  readonly words: string;
  readonly isGood: boolean;
}

export const useRecordedAnswer = (): ((check: Check, answer: Answer) => RecordedAnswer) => {
  const { t, inLanguage, lengthText } = useText();
  const findingWords = useFindingWords();
  return useCallback(
    (check, answer) => {
      switch (answer.kind) {
        case 'good': {
          const good = check.kind === 'condition' ? check.answers?.good : undefined;
          return { words: good === undefined ? t('walk:check.good') : inLanguage(good), isGood: true };
        }
        case 'marking':
          return { words: t(`walk:marking.${answer.state}`), isGood: answer.state === 'legible' };
        case 'length':
          return { words: lengthText(answer.confirmedM), isGood: true };
        case 'defects':
          return {
            words: answer.findings
              .map((finding) => {
                const words = findingWords(check, finding);
                return finding.note === undefined || finding.note === ''
                  ? words
                  : `${words}: “${finding.note}”`;
              })
              .join('; '),
            isGood: false,
          };
      }
    },
    [t, inLanguage, lengthText, findingWords],
  );
};
