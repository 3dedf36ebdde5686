/** A calendar date in three lists, the month in letters, so that day and month cannot be taken for each other. */
import { useId, useState } from 'react';
import { months, useText } from '../i18n/text.ts';
import { useReadyStation } from '../station/status.ts';
import styles from './date-input.module.css';
import field from './field.module.css';
import { Icon } from './icon.tsx';

export interface DateInputProps {
  readonly label: string;
  /** ISO 8601, or empty. */
  readonly value: string;
  /** Told the date once all three parts are chosen, and an empty text while one is open. */
  onChange(value: string): void;
  readonly error?: string | undefined;
}

type Part = 'year' | 'month' | 'day';

export const DateInput = ({ label, value, onChange, error }: DateInputProps) => {
  const { t } = useText();
  const id = useId();
  const [year = '', month = '', day = ''] = value.split('-');
  const [parts, setParts] = useState<Readonly<Record<Part, string>>>({ year, month, day });
  const thisYear = Number((useReadyStation()?.today ?? new Date().toISOString()).slice(0, 4));

  const change = (part: Part, chosen: string): void => {
    const next = { ...parts, [part]: chosen };
    const isPast = next.day !== '' && Number(next.day) > daysIn(next.year, next.month);
    const sound = isPast ? { ...next, day: '' } : next;
    setParts(sound);
    const isWhole = Object.values(sound).every((each) => each !== '');
    onChange(isWhole ? `${sound.year}-${sound.month}-${sound.day}` : '');
  };

  const lists: readonly { readonly part: Part; readonly options: readonly (readonly [string, string])[] }[] =
    [
      {
        part: 'day',
        options: numbers(1, daysIn(parts.year, parts.month)).map((n) => [padded(n), String(n)]),
      },
      { part: 'month', options: months.map((each) => [each, t(`screens:month.${each}`)]) },
      { part: 'year', options: numbers(thisYear - 15, thisYear + 15).map((n) => [String(n), String(n)]) },
    ];
  return (
    <fieldset
      className={field.field}
      {...(error === undefined ? {} : { 'aria-describedby': id, 'data-invalid': true })}
    >
      <legend className={field.label}>{label}</legend>
      <div className={styles.parts}>
        {lists.map(({ part, options }) => (
          <select
            key={part}
            className={field.input}
            aria-label={`${label}: ${t(`screens:date.${part}`)}`}
            value={parts[part]}
            onChange={(event) => change(part, event.target.value)}
          >
            <option value="">{t(`screens:date.${part}`)}</option>
            {options.map(([option, words]) => (
              <option key={option} value={option}>
                {words}
              </option>
            ))}
          </select>
        ))}
      </div>
      <span role="alert" id={id}>
        {error === undefined ? null : (
          <span className={field.error}>
            <Icon name="warning" />
            {error}
          </span>
        )}
      </span>
    </fieldset>
  );
};

/** 31 while the month is open; 29 for February while the year is. */
const daysIn = (year: string, month: string): number =>
  month === '' ? 31 : new Date(Date.UTC(year === '' ? 2000 : Number(year), Number(month), 0)).getUTCDate();

const numbers = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index);

const padded = (value: number): string => String(value).padStart(2, '0');
