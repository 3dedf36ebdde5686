/** How the backups stand, and one made now. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { type Text, useText } from '../../i18n/text.ts';
import { useWork } from '../../station/use-work.ts';
import styles from './keeping.module.css';
import { type BackupStatus, backupCalls } from './keeping-calls.ts';

type Shown = OutputOf<'keeping.show'>;

export const BackupBox = ({ shown, mayBackUp }: { readonly shown: Shown; readonly mayBackUp: boolean }) => {
  const text = useText();
  const { t } = text;
  const { status, error, isWorking, begin, cancel } = useWork(backupCalls);
  const refused = status?.state === 'refused' && !isWorking ? status.sentence : undefined;
  const made = status?.state === 'made' && !isWorking ? status : undefined;
  return (
    <section className={styles.box} aria-labelledby="backups">
      <h2 id="backups">{t('keeping:title')}</h2>
      <p className={styles.sign}>
        <Icon name={shown.state === 'kept' ? 'check' : 'late'} />
        <span>{stateText(shown, text)}</span>
      </p>
      {shown.trouble === undefined || isWorking || made !== undefined ? null : (
        <p>{t('keeping:trouble', { sentence: shown.trouble.sentence })}</p>
      )}
      {shown.folder.state === 'not there' && shown.trouble === undefined ? (
        <p>{shown.folder.sentence}</p>
      ) : null}
      {shown.folder.state === 'there' && shown.folder.onSameDisk ? <p>{t('keeping:sameDisk')}</p> : null}
      <div role="status">
        {isWorking ? <p>{progressText(status, text)}</p> : null}
        {made === undefined ? null : (
          <>
            <p className={styles.sign}>
              <Icon name="check" />
              {t('keeping:made', { events: made.record.size, pictures: made.pictures })}
            </p>
            <p className={styles.path}>{made.file}</p>
            {made.removed === 0 ? null : <p>{t('keeping:removed', { count: made.removed })}</p>}
          </>
        )}
      </div>
      <AlertLine sentence={error?.sentence ?? refused} />
      {mayBackUp ? (
        <div className={styles.buttons}>
          <Button
            look={shown.state === 'overdue' ? 'primary' : 'plain'}
            icon="away"
            isDisabled={shown.keeping === undefined}
            isRunning={isWorking}
            onPress={() => begin({})}
          >
            {t('keeping:now')}
          </Button>
          {isWorking ? <Button onPress={cancel}>{t('keeping:cancel')}</Button> : null}
        </div>
      ) : null}
      <p className={styles.soft}>{t('keeping:text')}</p>
    </section>
  );
};

const stateText = ({ state, lastBackup }: Shown, { t, dateText, language }: Text): string => {
  if (lastBackup === undefined)
    return t(state === 'kept' ? 'keeping:state.keptFirst' : `keeping:state.${state}`);
  const megabytes = (lastBackup.bytes / 1_000_000).toLocaleString(language, { maximumFractionDigits: 1 });
  const values = { on: dateText(lastBackup.on), events: lastBackup.record.size, megabytes };
  return state === 'overdue'
    ? `${t('keeping:state.overdue')} ${t('keeping:state.overdueSince', values)}`
    : t(`keeping:state.${state}`, values);
};

const progressText = (status: BackupStatus | undefined, { t }: Text): string =>
  status?.state === 'working' && status.of > 0
    ? t('keeping:making', { done: status.done, of: status.of })
    : t('keeping:copying');
