/** The quarantine tag is scanned back in, by its symbol or by its number; then the device goes to the bench. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './held.module.css';

export interface ReleaseDialogProps {
  readonly benchId: BenchId;
  onClose(): void;
}

export const ReleaseDialog = ({ benchId, onClose }: ReleaseDialogProps) => {
  const { t } = useText();
  const [number, setNumber] = useState('');
  const release = useStationCommand('release.take');
  const take = async (tag: string): Promise<void> => {
    const result = await release.run({ benchId, tag });
    if (result.ok) onClose();
  };
  useScanHandler(({ meaning, text }) => {
    if (meaning.meaning !== 'command') void take(text);
    else if (/^\d$/.test(meaning.command)) setNumber((before) => before + meaning.command);
    else if (meaning.command === 'erase') setNumber((before) => before.slice(0, -1));
    else return false;
    return true;
  });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void take(number);
  };
  return (
    <Dialog title={t('held:release.title', { benchId: formatBenchId(benchId) })} onClose={onClose}>
      <form className={styles.form} onSubmit={submit}>
        <p>{t('held:release.hint')}</p>
        <AlertLine sentence={release.error?.sentence} />
        <TextInput
          label={t('held:release.number')}
          value={number}
          onChange={setNumber}
          inputMode="numeric"
          autoFocus
        />
        <DialogActions
          isRunning={release.isRunning}
          onCancel={onClose}
          save={{ label: t('held:release.take'), isDisabled: number.trim() === '' }}
        />
      </form>
    </Dialog>
  );
};
