/** What was entered of a device at its registration, as the record says it now. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import type { CorrectionTask } from './correction-dialog.tsx';
import styles from './corrections.module.css';
import { useChoices } from './use-choices.ts';

type Entry = NonNullable<OutputOf<'record.amendable'>['device']>[number];

export interface EnteredValuesProps {
  readonly entries: readonly Entry[];
  readonly isInService: boolean;
  onCorrect(task: CorrectionTask): void;
}

export const EnteredValues = ({ entries, isInService, onCorrect }: EnteredValuesProps) => {
  const { t } = useText();
  const choices = useChoices();
  const wordsOf = ({ field, value = '' }: Entry): string => {
    const said = choices[field]?.find((choice) => choice.value === value)?.label ?? value;
    return said === '' ? t('corrections:none') : said;
  };
  return (
    <section className={styles.section} aria-labelledby="entered">
      <h2 id="entered">{t('corrections:entered')}</h2>
      <ul className={styles.list}>
        {entries.map((entry) => {
          const { field, amends, value = '' } = entry;
          const what = t(`corrections:field.${field}`);
          const needsReading = isInService && field !== 'regularUser';
          return (
            <li key={field} className={styles.item}>
              <div className={styles.words}>
                <span className={styles.soft}>{what}</span>
                <span className={styles.name}>{wordsOf(entry)}</span>
              </div>
              <Button
                label={t('corrections:correctWhat', { what })}
                onPress={() =>
                  onCorrect({ kind: field, amends, value, what, said: wordsOf(entry), needsReading })
                }
              >
                {t('corrections:correct')}
              </Button>
            </li>
          );
        })}
      </ul>
    </section>
  );
};
