/** What the manufacturer said of a return batch, and when it is asked next. */
import { type FormEvent, useState } from 'react';
import { calendarDate } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './held.module.css';

export const FollowUpDialog = ({ number, onClose }: { readonly number: number; onClose(): void }) => {
  const { t } = useText();
  const [note, setNote] = useState('');
  const [nextOn, setNextOn] = useState('');
  const [wasTried, setTried] = useState(false);
  const followUp = useStationCommand('return-batch.follow-up');
  const refused = faultsOf(followUp.error);
  const needed = (text: string): string | undefined =>
    text.trim() === '' ? t('screens:form.needed') : undefined;
  const own = { note: needed(note), nextOn: needed(nextOn) };
  const faults: Partial<typeof own> = wasTried ? own : {};
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    const result = await followUp.run({ batch: number, note, nextOn: calendarDate(nextOn) });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('held:returns.followUp')} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <TextInput
          label={t('held:returns.note')}
          value={note}
          onChange={setNote}
          error={faults.note ?? refused.at('note')}
          autoFocus
        />
        <DateInput
          label={t('held:returns.followUpOn')}
          value={nextOn}
          onChange={setNextOn}
          error={faults.nextOn ?? refused.at('followUpOn')}
        />
        <AlertLine sentence={refused.rest()} />
        <DialogActions isRunning={followUp.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
