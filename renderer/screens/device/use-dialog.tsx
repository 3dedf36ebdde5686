/** A competent person determines how hard devices are used, one or several at once. */
import { type FormEvent, useState } from 'react';
import { type BenchId, calendarDate } from '../../../src/domain/brand.ts';
import { type TypeOfUse, typesOfUse } from '../../../src/domain/due/type-of-use.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { useReadyStation } from '../../station/status.ts';
import styles from './device.module.css';

export interface UseDialogProps {
  readonly title: string;
  readonly benchIds: readonly BenchId[];
  /** What is determined already. */
  readonly typeOfUse?: TypeOfUse | undefined;
  onClose(): void;
  /** All of them have it now. */
  onDone?(): void;
}

export const UseDialog = ({ title, benchIds, typeOfUse, onClose, onDone = onClose }: UseDialogProps) => {
  const { t } = useText();
  const [use, setUse] = useState<TypeOfUse | undefined>(typeOfUse);
  const [from, setFrom] = useState<string>(useReadyStation()?.today ?? '');
  const [wasTried, setTried] = useState(false);
  const setTypeOfUse = useStationCommand('device.set-use');
  const refused = faultsOf(setTypeOfUse.error);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (use === undefined || from === '') return;
    const result = await setTypeOfUse.run({
      benchIds: [...benchIds],
      typeOfUse: use,
      from: calendarDate(from),
    });
    if (result.ok) onDone();
  };
  const fromError = refused.at('from') ?? (wasTried && from === '' ? t('screens:form.needed') : undefined);
  return (
    <Dialog title={title} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('program:typeOfUse.hint')}</p>
        <Choice<TypeOfUse>
          label={t('program:typeOfUse.title')}
          value={use}
          options={typesOfUse.map((value) => ({
            value,
            label: `${t(`program:use.${value}`)}. ${t(`program:typical.${value}`)}`,
          }))}
          onChange={setUse}
        />
        <DateInput label={t('program:typeOfUse.from')} value={from} onChange={setFrom} error={fromError} />
        <AlertLine
          sentence={
            refused.rest() ?? (wasTried && use === undefined ? t('program:typeOfUse.needed') : undefined)
          }
        />
        <DialogActions isRunning={setTypeOfUse.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
