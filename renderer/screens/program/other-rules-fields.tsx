/** What a program says besides intervals, as it is typed: dating, missed inspections, training, tags, records. */
import { languages } from '../../../src/domain/message.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { Choice } from '../../components/choice.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './program.module.css';
import { bounds, monthsOf, type ProgramDraft, wholeNumber } from './program-draft.ts';

export interface OtherRulesFieldsProps {
  readonly draft: ProgramDraft;
  onChange(changed: Partial<ProgramDraft>): void;
  readonly wasTried: boolean;
}

export const OtherRulesFields = ({ draft, onChange, wasTried }: OtherRulesFieldsProps) => {
  const { t } = useText();
  const within = (text: string, [least, most]: readonly [number, number]): string | undefined =>
    wasTried && wholeNumber(text, least, most) === undefined
      ? t('program:edit.notDays', { least, most })
      : undefined;
  const isTraining = draft.training.trim() === '' || monthsOf(draft.training) !== undefined;
  return (
    <section className={styles.group} aria-labelledby="other-rules">
      <h3 id="other-rules">{t('program:other.title')}</h3>
      <CheckBox isSelected={draft.monthEnd} onChange={(monthEnd) => onChange({ monthEnd })}>
        {t('program:edit.monthEnd')}
      </CheckBox>
      <div className={styles.pair}>
        <Choice
          label={t('program:edit.missed')}
          value={draft.missed}
          options={[
            { value: 'inspect', label: t('program:edit.inspect') },
            { value: 'revalidate', label: t('program:edit.revalidate') },
          ]}
          onChange={(missed) => onChange({ missed })}
        />
        <TextInput
          label={t('program:edit.grace')}
          value={draft.grace}
          onChange={(grace) => onChange({ grace })}
          error={within(draft.grace, bounds.grace)}
          inputMode="numeric"
        />
      </div>
      <div className={styles.fields}>
        <TextInput
          label={t('program:edit.training')}
          value={draft.training}
          onChange={(training) => onChange({ training })}
          error={wasTried && !isTraining ? t('program:edit.notWhole') : undefined}
          inputMode="numeric"
        />
        <TextInput
          label={t('program:edit.dueSoon')}
          value={draft.dueSoon}
          onChange={(dueSoon) => onChange({ dueSoon })}
          error={within(draft.dueSoon, bounds.dueSoon)}
          inputMode="numeric"
        />
        <TextInput
          label={t('program:edit.retention')}
          value={draft.retention}
          onChange={(retention) => onChange({ retention })}
          error={within(draft.retention, bounds.retention)}
          inputMode="numeric"
        />
        <TextInput
          label={t('program:edit.reinspection')}
          value={draft.reinspection}
          onChange={(reinspection) => onChange({ reinspection })}
          error={
            draft.reinspection.trim() !== '' && within(draft.reinspection, bounds.reinspection) !== undefined
              ? t('program:edit.notReinspection')
              : undefined
          }
          inputMode="numeric"
        />
      </div>
      <fieldset>
        <legend className={styles.legend}>{t('program:edit.languages')}</legend>
        <div className={styles.boxes}>
          {languages.map((language) => (
            <CheckBox
              key={language}
              isSelected={draft.languages.includes(language)}
              onChange={(isIn) =>
                onChange({
                  languages: languages.filter((each) =>
                    each === language ? isIn : draft.languages.includes(each),
                  ),
                })
              }
            >
              {t(`program:language.${language}`)}
            </CheckBox>
          ))}
        </div>
        <AlertLine
          sentence={wasTried && draft.languages.length === 0 ? t('program:edit.languageNeeded') : undefined}
        />
      </fieldset>
    </section>
  );
};
