/** Records that a person who had left works here again. */
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import type { PersonDialogProps } from './person-actions.tsx';
import { ReasonForm } from './reason-form.tsx';

export const ReturnDialog = ({ person, onClose }: PersonDialogProps) => {
  const { t } = useText();
  const { run, isRunning, error } = useStationCommand('person.return');
  const { personId, name } = person;
  const submit = async (because: string): Promise<void> => {
    if ((await run({ personId, because })).ok) onClose();
  };
  return (
    <Dialog title={t('people:dialog.return', { name })} onClose={onClose}>
      <ReasonForm
        text={t('people:dialog.returnText', { name })}
        isRunning={isRunning}
        error={error}
        onSubmit={(because) => void submit(because)}
        onCancel={onClose}
      />
    </Dialog>
  );
};
