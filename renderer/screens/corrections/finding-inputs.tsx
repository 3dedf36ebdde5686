/** The findings of a check: which defect, where on the lifeline, and what was seen. */
import type { ConditionCheck } from '../../../src/domain/procedure.ts';
import { Button } from '../../components/button.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './corrections.module.css';
import { emptyFinding, type FindingDraft } from './finding-draft.ts';

export interface FindingInputsProps {
  readonly check: ConditionCheck;
  readonly findings: readonly FindingDraft[];
  onChange(findings: readonly FindingDraft[]): void;
}

export const FindingInputs = ({ check, findings, onChange }: FindingInputsProps) => {
  const { t, inLanguage, lengthUnit } = useText();
  const change = (index: number, next: FindingDraft): void => onChange(findings.with(index, next));
  return (
    <>
      {findings.map((finding, index) => {
        const number = index + 1;
        return (
          <div key={number} className={styles.finding}>
            <SelectInput
              label={t('corrections:answer.defect', { number })}
              value={finding.defect}
              options={check.defects.map(({ key, label }) => ({ value: key, label: inLanguage(label) }))}
              onChange={(defect) => change(index, { ...finding, defect })}
            />
            {check.positioned ? (
              <TextInput
                label={t('corrections:answer.position', { unit: lengthUnit })}
                inputMode="decimal"
                value={finding.position}
                onChange={(position) => change(index, { ...finding, position })}
              />
            ) : null}
            <TextInput
              label={t('corrections:answer.note')}
              value={finding.note}
              onChange={(note) => change(index, { ...finding, note })}
            />
            {findings.length === 1 ? null : (
              <div>
                <Button onPress={() => onChange(findings.filter((_, other) => other !== index))}>
                  {t('corrections:answer.remove', { number })}
                </Button>
              </div>
            )}
          </div>
        );
      })}
      <div>
        <Button icon="plus" onPress={() => onChange([...findings, emptyFinding(check)])}>
          {t('corrections:answer.another')}
        </Button>
      </div>
    </>
  );
};
