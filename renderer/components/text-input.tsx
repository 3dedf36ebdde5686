/** A labelled line of text, with a hint, and what is wrong with it. */
import { Input, Label, Text, TextField } from 'react-aria-components';
import styles from './field.module.css';
import { Icon } from './icon.tsx';

export interface TextInputProps {
  readonly label: string;
  readonly value: string;
  onChange(value: string): void;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly type?: 'text' | 'password' | 'date' | 'search';
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
  readonly autoFocus?: boolean;
  readonly isDisabled?: boolean;
  readonly placeholder?: string;
  /** The label is spoken but not shown: a heading beside it says the same. */
  readonly isLabelHidden?: boolean;
}

export const TextInput = ({
  label,
  value,
  onChange,
  hint,
  error,
  type = 'text',
  inputMode,
  autoFocus = false,
  isDisabled = false,
  placeholder = '',
  isLabelHidden = false,
}: TextInputProps) => (
  <TextField
    className={styles.field ?? ''}
    value={value}
    onChange={onChange}
    type={type}
    isInvalid={error !== undefined}
    isDisabled={isDisabled}
    autoFocus={autoFocus}
    autoComplete="off"
    validationBehavior="aria"
    {...(inputMode === undefined ? {} : { inputMode })}
    {...(isLabelHidden ? { 'aria-label': label } : {})}
  >
    {isLabelHidden ? null : <Label className={styles.label ?? ''}>{label}</Label>}
    <Input className={styles.input ?? ''} spellCheck="false" placeholder={placeholder} />
    {hint === undefined || error !== undefined ? null : (
      <Text slot="description" className={styles.hint ?? ''}>
        {hint}
      </Text>
    )}
    <span role="alert">
      {error === undefined ? null : (
        <Text slot="errorMessage" className={styles.error ?? ''}>
          <Icon name="warning" />
          {error}
        </Text>
      )}
    </span>
  </TextField>
);
