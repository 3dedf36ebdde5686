/** Records the written designation of a person as a competent person. */
import { type FormEvent, useState } from 'react';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { PersonView } from '../../../src/station/person-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { DesignationFields, emptyDesignation } from '../../components/designation-fields.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './setup.module.css';

export interface DesignateDialogProps {
  readonly person: PersonView;
  onClose(): void;
}

export const DesignateDialog = ({ person, onClose }: DesignateDialogProps) => {
  const { t } = useText();
  const [draft, setDraft] = useState({ ...emptyDesignation, ...person.designation });
  const [wasTried, setTried] = useState(false);
  const designate = useStationCommand('person.designate');
  const needed = (value: string): string | undefined =>
    value.trim() === '' ? t('screens:form.needed') : undefined;
  const own = {
    designatedBy: needed(draft.designatedBy),
    designatedOn: needed(draft.designatedOn),
    trainingValidUntil: needed(draft.trainingValidUntil),
  };
  const faults: Partial<typeof own> = wasTried ? own : {};
  const refused = faultsOf(designate.error);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    const result = await designate.run({
      personId: person.personId,
      designation: {
        designatedBy: draft.designatedBy,
        designatedOn: calendarDate(draft.designatedOn),
        trainingValidUntil: calendarDate(draft.trainingValidUntil),
      },
    });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('screens:setup.designateTitle', { name: person.name })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('screens:setup.designateHint')}</p>
        <DesignationFields
          value={draft}
          onChange={setDraft}
          errors={{
            designatedBy: faults.designatedBy ?? refused.at('designation.designatedBy'),
            designatedOn: faults.designatedOn ?? refused.at('designation.designatedOn', 'designatedOn'),
            trainingValidUntil:
              faults.trainingValidUntil ?? refused.at('designation.trainingValidUntil', 'trainingValidUntil'),
          }}
        />
        <AlertLine sentence={refused.rest()} />
        <DialogActions isRunning={designate.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
