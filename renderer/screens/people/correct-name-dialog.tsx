/** Corrects a name that was entered wrongly. */
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { CorrectionDialog } from '../corrections/correction-dialog.tsx';
import type { PersonDialogProps } from './person-actions.tsx';

export const CorrectNameDialog = ({ person, onClose }: PersonDialogProps) => {
  const { t } = useText();
  const { personId, name } = person;
  const { data } = useStationQuery('record.amendable', { personId });
  if (data?.name === undefined) return null;
  const { amends, value } = data.name;
  const what = t('corrections:field.name');
  return (
    <CorrectionDialog
      title={t('corrections:personTitle', { name })}
      hint={t('corrections:personHint')}
      task={{ kind: 'name', amends, value, what, said: value, needsReading: false }}
      onClose={onClose}
    />
  );
};
