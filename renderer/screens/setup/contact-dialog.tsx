/** Enters how a manufacturer is reached, for all of its models. */
import { type FormEvent, useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './setup.module.css';

export interface ContactDialogProps {
  readonly manufacturer: string;
  readonly contact: string;
  onClose(): void;
}

export const ContactDialog = ({ manufacturer, contact, onClose }: ContactDialogProps) => {
  const { t } = useText();
  const [text, setText] = useState(contact);
  const [wasTried, setTried] = useState(false);
  const setContact = useStationCommand('model-sheet.set-contact');
  const isEmpty = text.trim() === '';
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (isEmpty) return;
    const result = await setContact.run({ manufacturer, manufacturerContact: text });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('records:contact.title', { manufacturer })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('records:contact.text')}</p>
        <TextInput
          label={t('records:contact.label')}
          value={text}
          onChange={setText}
          error={wasTried && isEmpty ? t('screens:form.needed') : undefined}
          autoFocus
        />
        <AlertLine sentence={setContact.error?.sentence} />
        <DialogActions isRunning={setContact.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
