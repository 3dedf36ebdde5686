/** Enters when a device was bought and first put into use, as far as that is known. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { knownDateSchema } from '../../../src/domain/equipment-facts.ts';
import type { DeviceCard } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './device.module.css';

export interface FactsDialogProps {
  readonly device: DeviceCard;
  onClose(): void;
}

export const FactsDialog = ({ device, onClose }: FactsDialogProps) => {
  const { t } = useText();
  const { benchId, purchasedOn = '', firstUsedOn = '' } = device;
  const [draft, setDraft] = useState({ purchasedOn, firstUsedOn });
  const [wasTried, setTried] = useState(false);
  const recordFacts = useStationCommand('device.record-facts');
  const shape = (text: string): string | undefined =>
    text.trim() === '' || knownDateSchema.safeParse(text.trim()).success
      ? undefined
      : t('records:facts.dateShape');
  const own = { purchasedOn: shape(draft.purchasedOn), firstUsedOn: shape(draft.firstUsedOn) };
  const faults: Partial<typeof own> = wasTried ? own : {};
  const refused = faultsOf(recordFacts.error);
  const errors = {
    purchasedOn: faults.purchasedOn ?? refused.at('purchasedOn'),
    firstUsedOn: faults.firstUsedOn ?? refused.at('firstUsedOn'),
  };
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    const result = await recordFacts.run({
      benchId,
      purchasedOn: draft.purchasedOn.trim() || null,
      firstUsedOn: draft.firstUsedOn.trim() || null,
    });
    if (result.ok) onClose();
  };
  const field = (name: keyof typeof draft) => ({
    value: draft[name],
    onChange: (value: string) => setDraft({ ...draft, [name]: value }),
    hint: t('records:facts.dateHint'),
    error: errors[name],
  });
  return (
    <Dialog title={t('records:facts.dialogTitle', { benchId: formatBenchId(benchId) })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('records:facts.dialogText')}</p>
        <TextInput label={t('records:facts.purchased')} {...field('purchasedOn')} autoFocus />
        <TextInput label={t('records:facts.firstUsed')} {...field('firstUsedOn')} />
        <AlertLine sentence={refused.rest()} />
        <DialogActions isRunning={recordFacts.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
