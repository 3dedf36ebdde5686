/** A competent person determines how hard a device is used. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { calendarDate } from '../../../src/domain/brand.ts';
import { type TypeOfUse, typesOfUse } from '../../../src/domain/due/type-of-use.ts';
import type { DeviceCard } from '../../../src/station/views.ts';
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
  readonly device: DeviceCard;
  onClose(): void;
}

export const UseDialog = ({ device, onClose }: UseDialogProps) => {
  const { t } = useText();
  const { benchId } = device;
  const [use, setUse] = useState<TypeOfUse | undefined>(device.typeOfUse);
  const [from, setFrom] = useState<string>(useReadyStation()?.today ?? '');
  const [wasTried, setTried] = useState(false);
  const setTypeOfUse = useStationCommand('device.set-use');
  const refused = faultsOf(setTypeOfUse.error);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (use === undefined || from === '') return;
    const result = await setTypeOfUse.run({
      benchIds: [benchId],
      typeOfUse: use,
      from: calendarDate(from),
    });
    if (result.ok) onClose();
  };
  const fromError = refused.at('from') ?? (wasTried && from === '' ? t('screens:form.needed') : undefined);
  return (
    <Dialog title={t('program:typeOfUse.dialog', { benchId: formatBenchId(benchId) })} onClose={onClose}>
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
