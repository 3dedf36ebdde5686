/** Records what the manufacturer's certificate of a revalidation says. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { DeviceCard } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './device.module.css';

export interface RevalidationDialogProps {
  readonly device: DeviceCard;
  onClose(): void;
}

export const RevalidationDialog = ({ device, onClose }: RevalidationDialogProps) => {
  const { t } = useText();
  const { benchId, manufacturer } = device;
  const [on, setOn] = useState('');
  const [by, setBy] = useState(manufacturer);
  const [certificate, setCertificate] = useState('');
  const [wasTried, setTried] = useState(false);
  const recordRevalidation = useStationCommand('device.record-revalidation');
  const refused = faultsOf(recordRevalidation.error);
  const needed = (text: string): string | undefined =>
    text.trim() === '' ? t('screens:form.needed') : undefined;
  const own = { on: needed(on), by: needed(by), certificate: needed(certificate) };
  const faults: Partial<typeof own> = wasTried ? own : {};
  const errors = {
    on: faults.on ?? refused.at('revalidatedOn'),
    by: faults.by ?? refused.at('revalidatedBy'),
    certificate: faults.certificate ?? refused.at('certificate'),
  };
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    const result = await recordRevalidation.run({
      benchId,
      revalidatedOn: calendarDate(on),
      revalidatedBy: by,
      certificate,
    });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('program:revalidation.dialog', { benchId: formatBenchId(benchId) })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('program:revalidation.hint')}</p>
        <DateInput label={t('program:revalidation.on')} value={on} onChange={setOn} error={errors.on} />
        <TextInput label={t('program:revalidation.by')} value={by} onChange={setBy} error={errors.by} />
        <TextInput
          label={t('program:revalidation.certificate')}
          value={certificate}
          onChange={setCertificate}
          error={errors.certificate}
        />
        <AlertLine sentence={refused.rest()} />
        <DialogActions isRunning={recordRevalidation.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
