/** What the list does not say: the order of dates, the unit of numbers, people who are nobody here. Nothing is guessed. */
import {
  type ColumnChoice,
  type DateOrder,
  type ImportUnit,
  unitsOf,
} from '../../../src/domain/fleet-import/column-meaning.ts';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './exchange.module.css';
import type { ImportPreview } from './import-calls.ts';

export interface QuestionsProps {
  readonly preview: ImportPreview;
  onColumn(column: number, chosen: Partial<ColumnChoice>): void;
  onWithoutPeople(): void;
}

export const Questions = ({ preview, onColumn, onWithoutPeople }: QuestionsProps) => {
  const { t } = useText();
  const { questions, columns } = preview;
  if (questions.length === 0) return null;
  const ask = (question: ImportPreview['questions'][number]) => {
    const examples = question.examples.join('; ');
    if (question.kind === 'unknown people') {
      return (
        <>
          <p>{t('exchange:askPeople', { count: question.count, examples })}</p>
          <Button onPress={onWithoutPeople}>{t('exchange:withoutPeople')}</Button>
        </>
      );
    }
    const { column } = question;
    const { heading = '', meaning = 'ignore' as const } = columns[column] ?? {};
    return question.kind === 'date order' ? (
      <Choice<DateOrder>
        label={t('exchange:askDates', { heading, examples })}
        isCompact
        value={undefined}
        options={question.fitting.map((value) => ({ value, label: t(`exchange:order.${value}`) }))}
        onChange={(dates) => onColumn(column, { dates })}
      />
    ) : (
      <Choice<ImportUnit>
        label={t('exchange:askUnit', { heading, examples })}
        isCompact
        value={undefined}
        options={unitsOf(meaning).map((value) => ({ value, label: value }))}
        onChange={(unit) => onColumn(column, { unit })}
      />
    );
  };
  return (
    <section className={styles.asked} aria-labelledby="questions">
      <h3 id="questions">{t('exchange:questionsTitle')}</h3>
      <ul className={styles.list}>
        {questions.map((question) => (
          <li key={'column' in question ? `${question.kind} ${question.column}` : question.kind}>
            {ask(question)}
          </li>
        ))}
      </ul>
    </section>
  );
};
