/** The person at the window changes their own PIN, with the one that holds now. */
import { type FormEvent, useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './people.module.css';
import { PinInput } from './pin-input.tsx';

export const OwnPinDialog = ({ onClose }: { onClose(): void }) => {
  const { t } = useText();
  const [pin, setPin] = useState('');
  const [newPin, setNewPin] = useState('');
  const [again, setAgain] = useState('');
  const [wasTried, setTried] = useState(false);
  const change = useStationCommand('person.change-own-pin');
  const refused = faultsOf(change.error);
  const differ = newPin === again ? undefined : t('screens:form.pinsDiffer');
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (differ !== undefined) return;
    if ((await change.run({ pin, newPin })).ok) onClose();
  };
  return (
    <Dialog title={t('people:dialog.ownPin')} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <PinInput
          label={t('people:form.oldPin')}
          value={pin}
          onChange={setPin}
          error={refused.at('pin')}
          autoFocus
        />
        <PinInput
          label={t('screens:setup.pin')}
          hint={t('screens:firstStart.pinHint')}
          value={newPin}
          onChange={setNewPin}
          error={refused.at('newPin')}
        />
        <PinInput
          label={t('screens:setup.pinAgain')}
          value={again}
          onChange={setAgain}
          error={wasTried ? differ : undefined}
        />
        <AlertLine sentence={refused.rest()} />
        <DialogActions isRunning={change.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
