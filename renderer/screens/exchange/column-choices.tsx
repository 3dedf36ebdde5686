/** Each column of the list with what it is taken to mean, to be checked and changed. */
import {
  type ColumnChoice,
  columnMeanings,
  dateOrders,
  isDateMeaning,
  unitsOf,
} from '../../../src/domain/fleet-import/column-meaning.ts';
import { SelectInput } from '../../components/select-input.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './exchange.module.css';
import type { ImportPreview } from './import-calls.ts';

export interface ColumnChoicesProps {
  readonly preview: ImportPreview;
  onColumn(column: number, chosen: Partial<ColumnChoice>): void;
}

export const ColumnChoices = ({ preview, onColumn }: ColumnChoicesProps) => {
  const { t } = useText();
  return (
    <section className={styles.part} aria-labelledby="columns">
      <h3 id="columns">{t('exchange:columnsTitle')}</h3>
      <p className={styles.soft}>{t('exchange:columnsText')}</p>
      <ul className={styles.columns}>
        {preview.columns.map((column) => (
          <Column key={column.column} column={column} onColumn={onColumn} />
        ))}
      </ul>
    </section>
  );
};

interface ColumnProps {
  readonly column: ImportPreview['columns'][number];
  readonly onColumn: ColumnChoicesProps['onColumn'];
}

const Column = ({ column: shown, onColumn }: ColumnProps) => {
  const { t } = useText();
  const { column, meaning, proposed, because, unit, dates, examples } = shown;
  const heading = shown.heading === '' ? String(column + 1) : shown.heading;
  const units = unitsOf(meaning);
  return (
    <li className={styles.column}>
      <div className={styles.fields}>
        <SelectInput
          label={heading}
          value={meaning}
          options={columnMeanings.map((value) => ({ value, label: t(`exchange:meaning.${value}`) }))}
          onChange={(chosen) => onColumn(column, { meaning: chosen })}
        />
        {units.length === 0 ? null : (
          <SelectInput<(typeof units)[number] | ''>
            label={t('exchange:unit', { heading })}
            value={unit ?? ''}
            options={[
              ...(unit === undefined ? [{ value: '' as const, label: t('exchange:unitNone') }] : []),
              ...units.map((value) => ({ value, label: value })),
            ]}
            onChange={(chosen) => {
              if (chosen !== '') onColumn(column, { unit: chosen });
            }}
          />
        )}
        {isDateMeaning(meaning) && dates !== undefined ? (
          <SelectInput
            label={t('exchange:dates', { heading })}
            value={dates}
            options={dateOrders.map((value) => ({ value, label: t(`exchange:order.${value}`) }))}
            onChange={(chosen) => onColumn(column, { dates: chosen })}
          />
        ) : null}
      </div>
      <p className={styles.soft}>
        {meaning === proposed ? `${t(`exchange:because.${because}`)} · ` : ''}
        {examples.join(' · ')}
      </p>
    </li>
  );
};
