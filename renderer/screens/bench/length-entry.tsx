/** The length that came out, where it was less than the rated length. */
import type { Metres } from '../../../src/domain/brand.ts';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import { useText } from '../../i18n/text.ts';
import { useFocusWithin } from '../../navigation/use-focus-within.ts';
import type { DraftInput } from './answer-draft.ts';
import { DraftActions } from './draft-actions.tsx';
import { Keypad } from './keypad.tsx';
import styles from './length-entry.module.css';
import { NumberEntry } from './number-entry.tsx';

export interface LengthEntryProps {
  readonly typed: string;
  readonly ratedLengthM: Metres;
  readonly isSending: boolean;
  onInput(input: DraftInput): void;
  onCommand(command: CommandName): void;
}

export const LengthEntry = ({ typed, ratedLengthM, isSending, onInput, onCommand }: LengthEntryProps) => {
  const { t, lengthText, lengthUnit } = useText();
  const entry = useFocusWithin<HTMLDivElement>('input');
  return (
    <section ref={entry} className={styles.length}>
      <div className={styles.words}>
        <h2>{t('walk:length.title')}</h2>
        <p>{t('walk:length.hint', { length: lengthText(ratedLengthM) })}</p>
        <NumberEntry
          label={t('walk:length.input', { unit: lengthUnit })}
          typed={typed}
          onType={(text) => onInput({ kind: 'typed', text })}
          onConfirm={() => onInput({ kind: 'confirm' })}
        />
        <DraftActions
          confirm={t('walk:length.confirm')}
          isDisabled={isSending}
          onConfirm={() => onInput({ kind: 'confirm' })}
          onCancel={() => onInput({ kind: 'cancel' })}
        />
      </div>
      <Keypad shape="calculator" onCommand={onCommand} />
    </section>
  );
};
