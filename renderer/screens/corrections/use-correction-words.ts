/** A correction in words: what it is about, and both what was said and what is said now. */
import type { Answer } from '../../../src/domain/answer.ts';
import type { AmendmentView } from '../../../src/station/amendment-view.ts';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useBareAnswerWords } from '../bench/use-answer-words.ts';

export interface CorrectionWords {
  readonly what: string;
  readonly was: string;
  readonly now: string;
}

export const useCorrectionWords = (): ((amendment: AmendmentView) => CorrectionWords) => {
  const { t, inLanguage } = useText();
  const answerWords = useBareAnswerWords();
  const { data } = useStationQuery('procedure.show', {});
  return ({ correction, inspection = 0 }) => {
    if (correction.field !== 'answer') {
      const { was = t('corrections:none'), now = t('corrections:none') } = correction;
      return { what: t(`corrections:field.${correction.field}`), was, now };
    }
    const check = data?.procedure.checks.find(({ key }) => key === correction.check);
    const words = (answer: Answer): string =>
      check === undefined ? answer.kind : answerWords(check, answer);
    const title = check === undefined ? correction.check : inLanguage(check.title);
    return {
      what: t('corrections:whatAnswer', { inspection, check: title }),
      was: words(correction.was),
      now: words(correction.now),
    };
  };
};
