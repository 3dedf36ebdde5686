/** The people of the station: who they are, what they may do, and whether they may sign. */
import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { AddPersonDialog } from './add-person-dialog.tsx';
import styles from './people.module.css';
import { PersonRow } from './person-row.tsx';
import { useIsAdministrator } from './use-is-administrator.ts';

export const People = () => {
  const { t } = useText();
  const { data, error } = useStationQuery('person.list', {});
  const isAdministrator = useIsAdministrator();
  const [isAdding, setAdding] = useState(false);
  if (error !== undefined) return <StationError error={error} />;
  return (
    <>
      {isAdministrator ? (
        <div className={styles.actions}>
          <Button icon="plus" onPress={() => setAdding(true)}>
            {t('screens:setup.addPerson')}
          </Button>
        </div>
      ) : null}
      <ul className={styles.list}>
        {(data?.people ?? []).map((person) => (
          <PersonRow key={person.personId} person={person} />
        ))}
      </ul>
      {isAdding ? <AddPersonDialog onClose={() => setAdding(false)} /> : null}
    </>
  );
};
