/** What should stand in the record: typed, or chosen among the model sheets or the people. */
import { useState } from 'react';
import type { WantedCorrection } from '../../../src/domain/amendment.ts';
import { SelectInput } from '../../components/select-input.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import type { ValueTask } from './correction-dialog.tsx';
import { useChoices } from './use-choices.ts';

export interface ValueInputProps {
  readonly task: ValueTask;
  /** Told nothing while what is typed is not whole. */
  onChange(wanted: WantedCorrection | undefined): void;
  readonly error: string | undefined;
}

export const ValueInput = ({ task, onChange, error }: ValueInputProps) => {
  const { t } = useText();
  const [value, setValue] = useState(task.value);
  const choices = useChoices()[task.kind];
  const change = (next: string): void => {
    setValue(next);
    onChange(wantedFrom(task.kind, next.trim()));
  };
  return choices === undefined ? (
    <TextInput label={t('corrections:now')} value={value} onChange={change} error={error} autoFocus />
  ) : (
    <SelectInput label={t('corrections:now')} value={value} options={choices} onChange={change} />
  );
};

const wantedFrom = (field: ValueTask['kind'], now: string): WantedCorrection | undefined => {
  if (field === 'regularUser') return now === '' ? { field } : { field, now };
  return now === '' ? undefined : { field, now };
};
