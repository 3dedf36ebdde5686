/** The intervals that a program chooses for each type of use, within the standard. */
import { typesOfUse } from '../../../src/domain/due/type-of-use.ts';
import { CheckBox } from '../../components/check-box.tsx';
import type { FormFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './program.module.css';
import { monthsOf, type ProgramDraft, type UseDraft } from './program-draft.ts';

export interface UseFieldsProps {
  readonly draft: ProgramDraft;
  onChange(changed: Partial<ProgramDraft>): void;
  readonly wasTried: boolean;
  readonly refused: FormFaults;
}

export const UseFields = ({ draft, onChange, wasTried, refused }: UseFieldsProps) => {
  const { t } = useText();
  const shape = (text: string): string | undefined =>
    wasTried && monthsOf(text) === undefined ? t('program:edit.notWhole') : undefined;
  return (
    <section className={styles.group}>
      <CheckBox isSelected={draft.isByUse} onChange={(isByUse) => onChange({ isByUse })}>
        {t('program:edit.byUse')}
      </CheckBox>
      {draft.isByUse
        ? typesOfUse.map((use) => {
            const named = t(`program:use.${use}`);
            const chosen = draft.uses[use];
            const change = (changed: Partial<UseDraft>): void =>
              onChange({ uses: { ...draft.uses, [use]: { ...chosen, ...changed } } });
            return (
              <div key={use} className={styles.pair}>
                <TextInput
                  label={t('program:edit.useInspection', { use: named })}
                  value={chosen.inspection}
                  onChange={(inspection) => change({ inspection })}
                  error={refused.at(`program.typesOfUse.${use}.inspectionMonths`) ?? shape(chosen.inspection)}
                  inputMode="numeric"
                />
                <TextInput
                  label={t('program:edit.useRevalidation', { use: named })}
                  value={chosen.revalidation}
                  onChange={(revalidation) => change({ revalidation })}
                  error={
                    refused.at(`program.typesOfUse.${use}.revalidationMonths`) ?? shape(chosen.revalidation)
                  }
                  inputMode="numeric"
                />
              </div>
            );
          })
        : null}
    </section>
  );
};
