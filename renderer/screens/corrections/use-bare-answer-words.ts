/** An answer in as few words as say it, to stand beside another. */
import type { Answer } from '../../../src/domain/answer.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import { useText } from '../../i18n/text.ts';
import { useFindingWords } from '../bench/use-answer-words.ts';

export const useBareAnswerWords = (): ((check: Check, answer: Answer) => string) => {
  const { t, inLanguage, lengthText } = useText();
  const findingWords = useFindingWords();
  return (check, answer) => {
    switch (answer.kind) {
      case 'good': {
        const good = check.kind === 'condition' ? check.answers?.good : undefined;
        return good === undefined ? t('walk:check.good') : inLanguage(good);
      }
      case 'marking':
        return t(`walk:marking.${answer.state}`);
      case 'length':
        return lengthText(answer.confirmedM);
      case 'defects':
        return answer.findings
          .map((finding) => [findingWords(check, finding), finding.note].filter(Boolean).join(': '))
          .join('; ');
    }
  };
};
