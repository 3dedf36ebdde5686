/** Sets the first PIN of a person, or resets it with the reason. */
import { type FormEvent, useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './people.module.css';
import type { PersonDialogProps } from './person-actions.tsx';
import { PinInput } from './pin-input.tsx';

export const SetPinDialog = ({ person, onClose }: PersonDialogProps) => {
  const { t } = useText();
  const [pin, setPin] = useState('');
  const [again, setAgain] = useState('');
  const [because, setBecause] = useState('');
  const [wasTried, setTried] = useState(false);
  const set = useStationCommand('person.set-pin');
  const refused = faultsOf(set.error);
  const differ = pin === again ? undefined : t('screens:form.pinsDiffer');
  const { personId, name, pinSet } = person;
  const isReasonMissing = pinSet && because.trim() === '';
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (differ !== undefined || isReasonMissing) return;
    if ((await set.run({ personId, pin, ...(pinSet ? { because } : {}) })).ok) onClose();
  };
  return (
    <Dialog title={t('screens:setup.pinTitle', { name })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        {pinSet ? <p>{t('people:dialog.resetText', { name })}</p> : null}
        <PinInput
          label={t('screens:setup.pin')}
          value={pin}
          onChange={setPin}
          hint={t('screens:firstStart.pinHint')}
          error={refused.at('pin')}
          autoFocus
        />
        <PinInput
          label={t('screens:setup.pinAgain')}
          value={again}
          onChange={setAgain}
          error={wasTried ? differ : undefined}
        />
        {pinSet ? (
          <TextInput
            label={t('people:form.because')}
            hint={t('people:form.becauseHint')}
            value={because}
            onChange={setBecause}
            error={wasTried && isReasonMissing ? t('screens:form.needed') : refused.at('because')}
          />
        ) : null}
        <AlertLine sentence={refused.rest()} />
        <DialogActions isRunning={set.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
