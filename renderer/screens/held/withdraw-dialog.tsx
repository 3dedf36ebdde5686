/** Withdraws evidence, with the reason. */
import { type FormEvent, useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './held.module.css';

export interface WithdrawDialogProps {
  readonly benchId: BenchId;
  readonly evidence: number;
  onClose(): void;
}

export const WithdrawDialog = ({ benchId, evidence, onClose }: WithdrawDialogProps) => {
  const { t } = useText();
  const [because, setBecause] = useState('');
  const withdraw = useStationCommand('held.withdraw-evidence');
  const faults = faultsOf(withdraw.error);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const result = await withdraw.run({ benchId, evidence, because });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('held:withdrawTitle', { evidence })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('held:withdrawHint')}</p>
        <TextInput
          label={t('held:because')}
          value={because}
          onChange={setBecause}
          error={faults.at('because')}
          autoFocus
        />
        <AlertLine sentence={faults.rest()} />
        <DialogActions isRunning={withdraw.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
