/** Sets the PIN with which a person signs. */
import { type FormEvent, useState } from 'react';
import type { PersonView } from '../../../src/station/person-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './setup.module.css';

export interface SetPinDialogProps {
  readonly person: PersonView;
  onClose(): void;
}

export const SetPinDialog = ({ person, onClose }: SetPinDialogProps) => {
  const { t } = useText();
  const [pin, setPin] = useState('');
  const [again, setAgain] = useState('');
  const [wasTried, setTried] = useState(false);
  const set = useStationCommand('person.set-pin');
  const refused = faultsOf(set.error);
  const differ = pin === again ? undefined : t('screens:form.pinsDiffer');
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (differ !== undefined) return;
    if ((await set.run({ personId: person.personId, pin })).ok) onClose();
  };
  return (
    <Dialog title={t('screens:setup.pinTitle', { name: person.name })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <TextInput
          label={t('screens:setup.pin')}
          value={pin}
          onChange={setPin}
          type="password"
          inputMode="numeric"
          hint={t('screens:firstStart.pinHint')}
          error={refused.at('pin')}
          autoFocus
        />
        <TextInput
          label={t('screens:setup.pinAgain')}
          value={again}
          onChange={setAgain}
          type="password"
          inputMode="numeric"
          error={wasTried ? differ : undefined}
        />
        <AlertLine sentence={refused.rest()} />
        <DialogActions isRunning={set.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
