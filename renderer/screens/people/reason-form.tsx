/** A form that asks why, and where it matters from which day on. */
import { type FormEvent, useState } from 'react';
import { type CalendarDate, calendarDate } from '../../../src/domain/brand.ts';
import type { CallError } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useReadyStation } from '../../station/status.ts';
import styles from './people.module.css';

export interface ReasonFormProps {
  readonly text: string;
  /** Asked for where it is given, with today to begin with; `field` is what the station calls it. */
  readonly day?: { readonly label: string; readonly field: string };
  readonly isRunning: boolean;
  readonly error: CallError | undefined;
  onSubmit(because: string, on: CalendarDate): void;
  onCancel(): void;
}

export const ReasonForm = ({ text, day, isRunning, error, onSubmit, onCancel }: ReasonFormProps) => {
  const { t } = useText();
  const today = useReadyStation()?.today ?? '';
  const [because, setBecause] = useState('');
  const [on, setOn] = useState<string>(today);
  const [wasTried, setTried] = useState(false);
  const needed = (value: string): string | undefined =>
    value.trim() === '' && wasTried ? t('screens:form.needed') : undefined;
  const refused = faultsOf(error);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (because.trim() === '' || on === '') return;
    onSubmit(because, calendarDate(on));
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <p>{text}</p>
      <TextInput
        label={t('people:form.because')}
        hint={t('people:form.becauseHint')}
        value={because}
        onChange={setBecause}
        error={needed(because) ?? refused.at('because')}
        autoFocus
      />
      {day === undefined ? null : (
        <DateInput
          label={day.label}
          value={on}
          onChange={setOn}
          error={needed(on) ?? refused.at(day.field)}
        />
      )}
      <AlertLine sentence={refused.rest()} />
      <DialogActions isRunning={isRunning} onCancel={onCancel} />
    </form>
  );
};
