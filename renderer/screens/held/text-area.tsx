/** Several lines of text, as a competent person writes what was found. */
import { useId } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import styles from './held.module.css';

export interface TextAreaProps {
  readonly label: string;
  readonly value: string;
  onChange(value: string): void;
  readonly error?: string | undefined;
}

export const TextArea = ({ label, value, onChange, error }: TextAreaProps) => {
  const id = useId();
  return (
    <div className={styles.group}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      <textarea
        id={id}
        className={styles.area}
        value={value}
        spellCheck="false"
        aria-invalid={error !== undefined}
        onChange={(event) => onChange(event.target.value)}
      />
      <AlertLine sentence={error} />
    </div>
  );
};
