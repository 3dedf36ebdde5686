/** A calendar date, and beside it the date in words, so that day and month cannot be taken for each other. */
import { useText } from '../i18n/text.ts';
import { TextInput } from './text-input.tsx';

export interface DateInputProps {
  readonly label: string;
  /** ISO 8601, or empty. */
  readonly value: string;
  onChange(value: string): void;
  readonly error?: string | undefined;
}

export const DateInput = ({ label, value, onChange, error }: DateInputProps) => {
  const { dateText } = useText();
  const words = /^\d{4}-\d{2}-\d{2}$/.test(value) ? dateText(value) : undefined;
  return <TextInput label={label} value={value} onChange={onChange} type="date" hint={words} error={error} />;
};
