/** Names the defects of a check: which they are, where on the lifeline each one lies, and a note. */
import type { Metres } from '../../../src/domain/brand.ts';
import type { ConditionCheck } from '../../../src/domain/procedure.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import type { Draft, DraftInput } from './answer-draft.ts';
import { DefectChoices } from './defect-choices.tsx';
import styles from './defect-picker.module.css';
import { DraftActions } from './draft-actions.tsx';
import { FoundList } from './found-list.tsx';
import { Placing } from './placing.tsx';
import { useFindingWords } from './use-answer-words.ts';

export interface DefectPickerProps {
  readonly check: ConditionCheck;
  readonly draft: Extract<Draft, { stage: 'defects' }>;
  readonly ratedLengthM: Metres;
  readonly isSending: boolean;
  onInput(input: DraftInput): void;
}

export const DefectPicker = ({ check, draft, ratedLengthM, isSending, onInput }: DefectPickerProps) => {
  const { t } = useText();
  const words = useFindingWords();
  const { findings, placing, noted } = draft;
  const notedFinding = noted === undefined ? undefined : findings[noted];
  return (
    <section className={styles.picker}>
      {placing !== undefined && (
        <Placing
          key={placing.defect}
          check={check}
          findings={findings}
          placing={placing}
          ratedLengthM={ratedLengthM}
          onInput={onInput}
        />
      )}
      {placing === undefined && (
        <>
          <h2 className={styles.title}>
            {t('walk:picker.title')}{' '}
            <span className={styles.hint}>
              {t(check.positioned ? 'walk:picker.whichNext' : 'walk:picker.several')}
            </span>
          </h2>
          <DefectChoices
            check={check}
            findings={findings}
            onChoose={(defect) => onInput({ kind: 'choose', defect })}
          />
          {check.positioned && (
            <FoundList
              check={check}
              findings={findings}
              onDrop={(finding) => onInput({ kind: 'drop', finding })}
            />
          )}
          {notedFinding !== undefined && (
            <TextInput
              label={t('walk:picker.note', { finding: words(check, notedFinding) })}
              isLabelHidden
              placeholder={t('walk:picker.note', { finding: words(check, notedFinding) })}
              value={notedFinding.note ?? ''}
              onChange={(text) => onInput({ kind: 'note', text: text.slice(0, 300) })}
            />
          )}
          <DraftActions
            confirm={
              findings.length === 0
                ? t('walk:picker.confirm')
                : t('walk:picker.confirmCount', { count: findings.length })
            }
            isDisabled={isSending}
            onConfirm={() => onInput({ kind: 'confirm' })}
            onCancel={() => onInput({ kind: 'cancel' })}
          />
        </>
      )}
    </section>
  );
};
