/** Ends the designation of a person, with its day and reason. */
import type { CalendarDate } from '../../../src/domain/brand.ts';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import type { PersonDialogProps } from './person-actions.tsx';
import { ReasonForm } from './reason-form.tsx';

export const EndDesignationDialog = ({ person, onClose }: PersonDialogProps) => {
  const { t } = useText();
  const { run, isRunning, error } = useStationCommand('person.end-designation');
  const { personId, name } = person;
  const submit = async (because: string, endedOn: CalendarDate): Promise<void> => {
    if ((await run({ personId, endedOn, because })).ok) onClose();
  };
  return (
    <Dialog title={t('people:dialog.end', { name })} onClose={onClose}>
      <ReasonForm
        text={t('people:dialog.endText', { name })}
        day={{ label: t('people:form.endedOn'), field: 'endedOn' }}
        isRunning={isRunning}
        error={error}
        onSubmit={(because, on) => void submit(because, on)}
        onCancel={onClose}
      />
    </Dialog>
  );
};
