/** Where backups and checkpoints go by themselves on every day, and how many backups stay. */
import { type FormEvent, useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './keeping.module.css';

const most = { days: 366, months: 120 } as const;

export const KeepingForm = ({ keeping }: { readonly keeping: OutputOf<'keeping.show'>['keeping'] }) => {
  const { t } = useText();
  const { run, isRunning, error } = useStationCommand('keeping.set');
  const [backupFolder, setBackupFolder] = useState(keeping?.backupFolder ?? '');
  const [checkpointFolder, setCheckpointFolder] = useState(keeping?.checkpointFolder ?? '');
  const [days, setDays] = useState(String(keeping?.keepDays ?? 14));
  const [months, setMonths] = useState(String(keeping?.keepMonths ?? 12));
  const [isSaved, setSaved] = useState(false);
  const wrongDays = numberIn(days, 1, most.days) === undefined;
  const wrongMonths = numberIn(months, 0, most.months) === undefined;
  const save = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const keepDays = numberIn(days, 1, most.days);
    const keepMonths = numberIn(months, 0, most.months);
    if (keepDays === undefined || keepMonths === undefined) return;
    const checkpoints = checkpointFolder.trim() === '' ? {} : { checkpointFolder };
    const answer = await run({ keeping: { backupFolder, keepDays, keepMonths, ...checkpoints } });
    setSaved(answer.ok);
  };
  const faultAt = (field: string): string | undefined =>
    error?.field === field ? error.sentence : undefined;
  const isAtField = error?.field === 'backupFolder' || error?.field === 'checkpointFolder';
  return (
    <section className={styles.box} aria-labelledby="keeping-set">
      <h2 id="keeping-set">{t('keeping:set.title')}</h2>
      <form className={styles.form} onSubmit={(event) => void save(event)}>
        <TextInput
          label={t('keeping:set.folder')}
          hint={t('keeping:set.folderHint')}
          value={backupFolder}
          onChange={setBackupFolder}
          error={faultAt('backupFolder')}
        />
        <div className={styles.numbers}>
          <TextInput
            label={t('keeping:set.days')}
            inputMode="numeric"
            value={days}
            onChange={setDays}
            error={wrongDays ? t('keeping:set.number', { least: 1, most: most.days }) : undefined}
          />
          <TextInput
            label={t('keeping:set.months')}
            inputMode="numeric"
            value={months}
            onChange={setMonths}
            error={wrongMonths ? t('keeping:set.number', { least: 0, most: most.months }) : undefined}
          />
        </div>
        <p className={styles.soft}>{t('keeping:set.daysHint')}</p>
        <TextInput
          label={t('keeping:set.checkpoint')}
          hint={t('keeping:set.checkpointHint')}
          value={checkpointFolder}
          onChange={setCheckpointFolder}
          error={faultAt('checkpointFolder')}
        />
        <AlertLine sentence={isAtField ? undefined : error?.sentence} />
        <div role="status">{isSaved && error === undefined ? <p>{t('keeping:set.saved')}</p> : null}</div>
        <Button type="submit" look="primary" isDisabled={backupFolder.trim() === ''} isRunning={isRunning}>
          {t('keeping:set.save')}
        </Button>
      </form>
    </section>
  );
};

const numberIn = (text: string, least: number, mostNumber: number): number | undefined => {
  const number = Number(text.trim());
  return /^\d+$/.test(text.trim()) && number >= least && number <= mostNumber ? number : undefined;
};
