/** Closes a fall case with what the investigation found, by another person than who opened it. */
import { type FormEvent, useState } from 'react';
import type { HeldView } from '../../../src/station/held-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { useSignedIn } from '../../station/status.ts';
import styles from './held.module.css';
import { TextArea } from './text-area.tsx';

export interface CloseCaseDialogProps {
  readonly file: NonNullable<HeldView['fallCase']>;
  onClose(): void;
}

export const CloseCaseDialog = ({ file, onClose }: CloseCaseDialogProps) => {
  const { t } = useText();
  const person = useSignedIn();
  const [findings, setFindings] = useState('');
  const close = useStationCommand('fall-case.close');
  const faults = faultsOf(close.error);
  const { number, openedBy, openedById } = file;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const result = await close.run({ fallCase: number, findings });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('held:fall.closeTitle', { number })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        {person?.personId === openedById ? (
          <p className={styles.reason}>{t('held:fall.ownCase', { name: openedBy })}</p>
        ) : null}
        <TextArea
          label={t('held:fall.findings')}
          value={findings}
          onChange={setFindings}
          error={faults.at('findings')}
        />
        <AlertLine sentence={faults.rest()} />
        <DialogActions isRunning={close.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
