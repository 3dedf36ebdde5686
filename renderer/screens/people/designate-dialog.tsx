/** Records the written designation of a person as a competent person. */
import { type FormEvent, useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { designationFrom, draftOf, emptyDesignation } from '../../components/designation-draft.ts';
import { DesignationFields } from '../../components/designation-fields.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './people.module.css';
import type { PersonDialogProps } from './person-actions.tsx';
import { ScopeBoxes } from './scope-boxes.tsx';

export const DesignateDialog = ({ person, onClose }: PersonDialogProps) => {
  const { t } = useText();
  const before = person.designation;
  const [draft, setDraft] = useState(before === undefined ? emptyDesignation : draftOf(before));
  const [scope, setScope] = useState<readonly string[] | undefined>(before?.scope);
  const [wasTried, setTried] = useState(false);
  const designate = useStationCommand('person.designate');
  const needed = (value: string): string | undefined =>
    value.trim() === '' ? t('screens:form.needed') : undefined;
  const own = {
    designatedBy: needed(draft.designatedBy),
    designatedOn: needed(draft.designatedOn),
    trainingValidUntil: needed(draft.trainingValidUntil),
    scope: scope?.length === 0 ? t('people:form.scopeNeeded') : undefined,
  };
  const faults: Partial<typeof own> = wasTried ? own : {};
  const refused = faultsOf(designate.error);
  const at = (field: string): string | undefined => refused.at(`designation.${field}`, field);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    const written = designationFrom(draft);
    const result = await designate.run({
      personId: person.personId,
      designation: scope === undefined ? written : { ...written, scope: [...scope] },
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
            designatedBy: faults.designatedBy ?? at('designatedBy'),
            designatedOn: faults.designatedOn ?? at('designatedOn'),
            document: at('document'),
            trainingCourse: at('trainingCourse'),
            trainedOn: at('trainedOn'),
            trainingValidUntil: faults.trainingValidUntil ?? at('trainingValidUntil'),
          }}
        />
        <ScopeBoxes scope={scope} onChange={setScope} />
        <AlertLine sentence={faults.scope ?? refused.rest()} />
        <DialogActions isRunning={designate.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
