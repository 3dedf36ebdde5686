/** A length typed or scanned digit by digit, shown large; the up and down arrows may move it. */
import { useId } from 'react';
import { useText } from '../../i18n/text.ts';
import styles from './number-entry.module.css';

export interface NumberEntryProps {
  readonly label: string;
  readonly typed: string;
  /** Shown beside the number; that of the station's lengths where absent. */
  readonly unit?: string;
  onType(text: string): void;
  onConfirm(): void;
  /** Moves the number one step, where it stands for a place that can be moved. */
  onNudge?(direction: -1 | 1): void;
}

export const NumberEntry = ({ label, typed, unit, onType, onConfirm, onNudge }: NumberEntryProps) => {
  const { language, lengthUnit } = useText();
  const id = useId();
  return (
    <div className={styles.entry}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      <span className={styles.box}>
        <input
          id={id}
          className={styles.input}
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          value={language === 'es' ? typed.replace('.', ',') : typed}
          onChange={(event) => onType(event.target.value.replace(/[^\d.,]/g, ''))}
          onKeyDown={(event) => {
            if (event.key === 'Enter') {
              event.preventDefault();
              onConfirm();
            }
            if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
              event.preventDefault();
              onNudge?.(event.key === 'ArrowUp' ? 1 : -1);
            }
          }}
        />
        <span className={styles.unit}>{unit ?? lengthUnit}</span>
      </span>
    </div>
  );
};
