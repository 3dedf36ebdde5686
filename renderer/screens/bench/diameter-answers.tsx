/** The large answers of the diameter check: to give readings, and to go on without where nothing holds them. */
import type { Answer } from '../../../src/domain/answer.ts';
import { useText } from '../../i18n/text.ts';
import { AnswerButton } from './answer-button.tsx';
import type { DraftInput } from './answer-draft.ts';
import styles from './answer-row.module.css';
import { letterOf } from './shortcut.ts';

export interface DiameterAnswersProps {
  readonly hasMinimum: boolean;
  readonly given: Answer | undefined;
  readonly isSending: boolean;
  onInput(input: DraftInput): void;
}

export const DiameterAnswers = ({ hasMinimum, given, isSending, onInput }: DiameterAnswersProps) => {
  const { t } = useText();
  const readings = given?.kind === 'diameters' ? given.readings.length : undefined;
  return (
    <fieldset className={styles.row} aria-label={t('walk:check.answers')}>
      {!hasMinimum && (
        <AnswerButton
          label={t('evidence:diameter.without')}
          keyName={letterOf.good}
          look="good"
          isGiven={readings === 0}
          isDisabled={isSending}
          onPress={() => onInput({ kind: 'good' })}
        />
      )}
      <AnswerButton
        label={t('evidence:diameter.measure')}
        keyName={hasMinimum ? letterOf.good : letterOf.defect}
        look={hasMinimum ? 'good' : 'neutral'}
        icon="measure"
        isGiven={readings !== undefined && readings > 0}
        isDisabled={isSending}
        onPress={() => onInput({ kind: 'defect' })}
      />
    </fieldset>
  );
};
