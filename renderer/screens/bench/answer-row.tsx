/** The large answers of a check: two, or three for an element of the marking. */
import type { Answer } from '../../../src/domain/answer.ts';
import type { Metres } from '../../../src/domain/brand.ts';
import { markingStates } from '../../../src/domain/marking.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import { useText } from '../../i18n/text.ts';
import { AnswerButton } from './answer-button.tsx';
import type { DraftInput } from './answer-draft.ts';
import styles from './answer-row.module.css';
import { DiameterAnswers } from './diameter-answers.tsx';
import { letterOf } from './shortcut.ts';

export interface AnswerRowProps {
  readonly check: Check;
  readonly ratedLengthM: Metres;
  /** True where the model sheet gives the manufacturer's minimum of the diameter. */
  readonly hasMinimum: boolean;
  readonly given: Answer | undefined;
  readonly isSending: boolean;
  onInput(input: DraftInput): void;
}

export const AnswerRow = ({ check, ratedLengthM, hasMinimum, given, isSending, onInput }: AnswerRowProps) => {
  const { t, inLanguage, lengthText } = useText();
  if (check.kind === 'marking') {
    return (
      <fieldset className={styles.row} aria-label={t('walk:check.answers')}>
        {markingStates.map((state, index) => (
          <AnswerButton
            key={state}
            label={t(`walk:marking.${state}`)}
            keyName={index + 1}
            look={state === 'legible' ? 'good' : 'defect'}
            isGiven={given?.kind === 'marking' && given.state === state}
            isStacked
            isDisabled={isSending}
            onPress={() => onInput({ kind: 'marking', state })}
          />
        ))}
      </fieldset>
    );
  }
  if (check.kind === 'lifeline-diameter')
    return <DiameterAnswers hasMinimum={hasMinimum} given={given} isSending={isSending} onInput={onInput} />;
  const isWhole = given?.kind === 'length' && given.confirmedM >= ratedLengthM;
  const words =
    check.kind === 'payout-length'
      ? {
          good: t('walk:check.payoutGood', { length: lengthText(ratedLengthM).replace(' ', '\u00a0') }),
          defect: t('walk:check.payoutShort'),
        }
      : {
          good: check.answers === undefined ? t('walk:check.good') : inLanguage(check.answers.good),
          defect: check.answers === undefined ? t('walk:check.defect') : inLanguage(check.answers.defect),
        };
  return (
    <fieldset className={styles.row} aria-label={t('walk:check.answers')}>
      <AnswerButton
        label={words.good}
        keyName={letterOf.good}
        look="good"
        isGiven={given?.kind === 'good' || isWhole}
        isDisabled={isSending}
        onPress={() => onInput({ kind: 'good' })}
      />
      <AnswerButton
        label={words.defect}
        keyName={letterOf.defect}
        look="defect"
        isGiven={given?.kind === 'defects' || (given?.kind === 'length' && !isWhole)}
        isDisabled={isSending}
        onPress={() => onInput({ kind: 'defect' })}
      />
    </fieldset>
  );
};
