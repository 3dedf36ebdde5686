/** The answer that a check has already, and who gave it; it can be changed by answering anew. */

import type { Answered } from '../../../src/domain/inspection.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import { useText } from '../../i18n/text.ts';
import styles from './given-answer.module.css';
import { useAnswerWords } from './use-answer-words.ts';

export interface GivenAnswerProps {
  readonly check: Check;
  readonly answered: Answered;
  readonly isLookAgain: boolean;
}

export const GivenAnswer = ({ check, answered, isLookAgain }: GivenAnswerProps) => {
  const { t } = useText();
  const words = useAnswerWords();
  return (
    <p className={isLookAgain ? styles.again : styles.given} role={isLookAgain ? 'status' : undefined}>
      {isLookAgain && <strong>{t('walk:check.lookAgain')}</strong>}
      <span>
        {words(check, answered.answer)}, {t('walk:given.by', { name: answered.by })}
      </span>
    </p>
  );
};
