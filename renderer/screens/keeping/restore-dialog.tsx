/** What a backup holds and what restoring it would change; restored only with the PIN where there is a record already. */
import { type FormEvent, useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { type Text, useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './keeping.module.css';
import type { ReadyRestore } from './keeping-calls.ts';

export interface RestoreDialogProps {
  readonly job: number;
  readonly backup: ReadyRestore;
  onClose(): void;
}

export const RestoreDialog = ({ job, backup, onClose }: RestoreDialogProps) => {
  const text = useText();
  const { t, dateText } = text;
  const { run, isRunning, error } = useStationCommand('restore.run');
  const [pin, setPin] = useState('');
  const needsPin = backup.comparison !== undefined;
  const restore = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (needsPin && pin === '') return;
    await run(needsPin ? { job, pin } : { job });
  };
  return (
    <Dialog title={t('keeping:restore.ready', { station: backup.stationName })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void restore(event)}>
        <dl className={styles.facts}>
          <dt>{t('keeping:restore.madeAt')}</dt>
          <dd>{dateText(backup.madeAt)}</dd>
          <dt>{t('keeping:restore.events')}</dt>
          <dd>{backup.record.size}</dd>
          <dt>{t('keeping:restore.devices')}</dt>
          <dd>{backup.devices}</dd>
          <dt>{t('keeping:restore.pictures')}</dt>
          <dd>{backup.pictures}</dd>
        </dl>
        {backup.picturesLost === 0 ? null : (
          <p>{t('keeping:restore.lost', { count: backup.picturesLost })}</p>
        )}
        {backup.comparison === undefined ? null : (
          <>
            <p className={styles.strong}>{comparisonText(backup.comparison, text)}</p>
            <p>{t('keeping:restore.asideText')}</p>
            <TextInput
              label={t('keeping:restore.pin')}
              type="password"
              inputMode="numeric"
              value={pin}
              onChange={setPin}
              error={error?.field === 'pin' ? error.sentence : undefined}
            />
          </>
        )}
        <AlertLine sentence={error === undefined || error.field === 'pin' ? undefined : error.sentence} />
        <div className={styles.buttons}>
          <Button onPress={onClose}>{t('keeping:restore.back')}</Button>
          <Button type="submit" look="primary" isDisabled={needsPin && pin === ''} isRunning={isRunning}>
            {t('keeping:restore.run')}
          </Button>
        </div>
      </form>
    </Dialog>
  );
};

const comparisonText = (
  { same, onlyHere, onlyInBackup }: NonNullable<ReadyRestore['comparison']>,
  { t, dateText }: Text,
): string => {
  if (onlyHere.events === 0 && onlyInBackup.events === 0) return t('keeping:restore.same');
  const { events, signedInspections, from, to } = onlyHere.events === 0 ? onlyInBackup : onlyHere;
  const day = (date: string | undefined): string => (date === undefined ? '' : dateText(date));
  const values = { same, count: events, inspections: signedInspections, from: day(from), to: day(to) };
  if (onlyHere.events === 0) return t('keeping:restore.later', values);
  return t(onlyInBackup.events === 0 ? 'keeping:restore.earlier' : 'keeping:restore.parted', values);
};
