/** The keeping of the record: its backups, when they are made by themselves, and how one comes back. */
import { StationError } from '../../components/station-error.tsx';
import { useStationQuery } from '../../station/hooks.ts';
import { useReadyStation } from '../../station/status.ts';
import { BackupBox } from './backup-box.tsx';
import styles from './keeping.module.css';
import { KeepingForm } from './keeping-form.tsx';
import { RestoreBox } from './restore-box.tsx';

export const KeepingPanel = () => {
  const { data, error } = useStationQuery('keeping.show', {});
  const person = useReadyStation()?.person;
  if (error !== undefined) return <StationError error={error} />;
  if (data === undefined || person === undefined) return null;
  const isAdministrator = person.roles.includes('administrator');
  return (
    <div className={styles.boxes}>
      <div className={styles.column}>
        <BackupBox shown={data} mayBackUp={isAdministrator || person.roles.includes('inspector')} />
        {isAdministrator ? <RestoreBox folder={data.folder} /> : null}
      </div>
      {isAdministrator ? <KeepingForm keeping={data.keeping} /> : null}
    </div>
  );
};
