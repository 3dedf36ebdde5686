/** Records that a person works here no more. */
import type { CalendarDate } from '../../../src/domain/brand.ts';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import type { PersonDialogProps } from './person-actions.tsx';
import { ReasonForm } from './reason-form.tsx';

export const LeaveDialog = ({ person, onClose }: PersonDialogProps) => {
  const { t } = useText();
  const { run, isRunning, error } = useStationCommand('person.leave');
  const { personId, name } = person;
  const submit = async (because: string, leftOn: CalendarDate): Promise<void> => {
    if ((await run({ personId, leftOn, because })).ok) onClose();
  };
  return (
    <Dialog title={t('people:dialog.leave', { name })} onClose={onClose}>
      <ReasonForm
        text={t('people:dialog.leaveText', { name })}
        day={{ label: t('people:form.leftOn'), field: 'leftOn' }}
        isRunning={isRunning}
        error={error}
        onSubmit={(because, on) => void submit(because, on)}
        onCancel={onClose}
      />
    </Dialog>
  );
};
