/** The answers of one signed inspection, each as the record says it now. */
import { useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useBareAnswerWords } from '../bench/use-answer-words.ts';
import type { CorrectionTask } from './correction-dialog.tsx';
import styles from './corrections.module.css';

type Inspections = NonNullable<OutputOf<'record.amendable'>['inspections']>;

export interface SignedAnswersProps {
  readonly inspections: Inspections;
  onCorrect(task: CorrectionTask): void;
}

export const SignedAnswers = ({ inspections, onCorrect }: SignedAnswersProps) => {
  const { t, dateText } = useText();
  const [chosen, setChosen] = useState<string>();
  const shown = inspections.find(({ inspection }) => String(inspection) === chosen) ?? inspections[0];
  return (
    <section className={styles.section} aria-labelledby="answers">
      <h2 id="answers">{t('corrections:answers')}</h2>
      {shown === undefined ? (
        <p>{t('corrections:noAnswers')}</p>
      ) : (
        <>
          <SelectInput
            label={t('corrections:inspection')}
            value={String(shown.inspection)}
            options={inspections.map(({ inspection, signedOn }) => ({
              value: String(inspection),
              label: t('corrections:inspectionOption', { inspection, date: dateText(signedOn) }),
            }))}
            onChange={setChosen}
          />
          <Answers key={shown.inspection} signed={shown} onCorrect={onCorrect} />
        </>
      )}
    </section>
  );
};

interface AnswersProps {
  readonly signed: Inspections[number];
  onCorrect(task: CorrectionTask): void;
}

const Answers = ({ signed, onCorrect }: AnswersProps) => {
  const { t, inLanguage } = useText();
  const words = useBareAnswerWords();
  const { data } = useStationQuery('procedure.show', { inspection: signed.inspection });
  const checks = data?.procedure.checks ?? [];
  const ordered = checks.flatMap((check) => {
    const answered = signed.answers.find((each) => each.check === check.key);
    if (answered === undefined) return [];
    const { amends, answer } = answered;
    return [{ check, amends, answer }];
  });
  return (
    <ul className={styles.list}>
      {ordered.map(({ check, amends, answer }) => {
        const what = inLanguage(check.title);
        const said = words(check, answer);
        return (
          <li key={check.key} className={styles.item}>
            <div className={styles.words}>
              <span className={styles.name}>{what}</span>
              <span className={styles.soft}>{said}</span>
            </div>
            <Button
              label={t('corrections:correctWhat', { what })}
              onPress={() =>
                onCorrect({ kind: 'answer', amends, check, answer, what, said, needsReading: false })
              }
            >
              {t('corrections:correct')}
            </Button>
          </li>
        );
      })}
    </ul>
  );
};
