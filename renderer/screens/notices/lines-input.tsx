/** A labelled field of several lines, with a hint, and what is wrong with it. */
import { Label, Text, TextArea, TextField } from 'react-aria-components';
import field from '../../components/field.module.css';
import { Icon } from '../../components/icon.tsx';
import { classes } from '../../design/classes.ts';
import styles from './notices.module.css';

export interface LinesInputProps {
  readonly label: string;
  readonly value: string;
  onChange(value: string): void;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
}

export const LinesInput = ({ label, value, onChange, hint, error }: LinesInputProps) => (
  <TextField
    className={field.field ?? ''}
    value={value}
    onChange={onChange}
    isInvalid={error !== undefined}
    autoComplete="off"
    validationBehavior="aria"
  >
    <Label className={field.label ?? ''}>{label}</Label>
    <TextArea className={classes(field.input, styles.lines)} rows={3} spellCheck="false" />
    {hint === undefined || error !== undefined ? null : (
      <Text slot="description" className={field.hint ?? ''}>
        {hint}
      </Text>
    )}
    <span role="alert">
      {error === undefined ? null : (
        <Text slot="errorMessage" className={field.error ?? ''}>
          <Icon name="warning" />
          {error}
        </Text>
      )}
    </span>
  </TextField>
);
