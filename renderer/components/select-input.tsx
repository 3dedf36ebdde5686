/** One of a list, where the list is long; the platform's own list, which works by keyboard, touch and reader alike. */
import { useId } from 'react';
import styles from './field.module.css';

export interface SelectInputProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  onChange(value: Value): void;
}

export const SelectInput = <Value extends string>({
  label,
  value,
  options,
  onChange,
}: SelectInputProps<Value>) => {
  const id = useId();
  return (
    <div className={styles.field}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className={styles.input}
        value={value}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.target.value);
          if (chosen !== undefined) onChange(chosen.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
};
