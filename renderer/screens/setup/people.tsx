/** The people of the station: who they are, what they may do, and whether they may sign. */
import { useState } from 'react';
import type { PersonView } from '../../../src/station/person-view.ts';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { AddPersonDialog } from './add-person-dialog.tsx';
import { DesignateDialog } from './designate-dialog.tsx';
import { PersonRow } from './person-row.tsx';
import { SetPinDialog } from './set-pin-dialog.tsx';
import styles from './setup.module.css';

type Task = { readonly kind: 'add' } | { readonly kind: 'designate' | 'pin'; readonly person: PersonView };

export const People = () => {
  const { t } = useText();
  const { data, error } = useStationQuery('person.list', {});
  const [task, setTask] = useState<Task>();
  const close = (): void => setTask(undefined);
  if (error !== undefined) return <StationError error={error} />;
  return (
    <>
      <div className={styles.actions}>
        <Button icon="plus" onPress={() => setTask({ kind: 'add' })}>
          {t('screens:setup.addPerson')}
        </Button>
      </div>
      <ul className={styles.list}>
        {(data?.people ?? []).map((person) => (
          <PersonRow
            key={person.personId}
            person={person}
            onDesignate={() => setTask({ kind: 'designate', person })}
            onSetPin={() => setTask({ kind: 'pin', person })}
          />
        ))}
      </ul>
      {task?.kind === 'add' ? <AddPersonDialog onClose={close} /> : null}
      {task?.kind === 'designate' ? <DesignateDialog person={task.person} onClose={close} /> : null}
      {task?.kind === 'pin' ? <SetPinDialog person={task.person} onClose={close} /> : null}
    </>
  );
};
