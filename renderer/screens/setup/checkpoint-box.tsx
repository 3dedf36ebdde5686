/** The latest checkpoint of the record, and a place outside the record to keep it. */
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { CallError, OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { recall, remember } from '../../station/remembered.ts';
import styles from './setup.module.css';

const rememberedAs = 'checkpoint-folder';

export const CheckpointBox = () => {
  const { t, dateText } = useText();
  const { data } = useStationQuery('checkpoint.list', { limit: 1 });
  const [folder, setFolder] = useState(recall(rememberedAs) ?? '');
  const [saved, setSaved] = useState<OutputOf<'checkpoint.export'>>();
  const [error, setError] = useState<CallError>();
  const queries = useQueryClient();
  const latest = data?.checkpoints[0];
  const save = async (): Promise<void> => {
    const answer = await call('checkpoint.export', { path: folder });
    setError(answer.ok ? undefined : answer.error);
    setSaved(answer.ok ? answer.output : undefined);
    if (!answer.ok) return;
    remember(rememberedAs, folder);
    await queries.invalidateQueries();
  };
  return (
    <section className={styles.box} aria-labelledby="checkpoint">
      <h2 id="checkpoint">{t('ledger:checkpointTitle')}</h2>
      <p>{t('ledger:checkpointText')}</p>
      {data === undefined ? null : (
        <p className={styles.name}>
          {latest === undefined
            ? t('ledger:none')
            : t('ledger:latest', { size: latest.size, recorded: data.recorded, on: dateText(latest.at) })}
        </p>
      )}
      <TextInput
        label={t('ledger:folder')}
        hint={t('ledger:folderHint')}
        value={folder}
        onChange={setFolder}
      />
      <div role="status">
        {saved === undefined ? null : (
          <>
            <p className={styles.sign}>
              <Icon name="check" />
              {t('ledger:saved', { size: saved.size })}
            </p>
            <p className={styles.path}>{saved.path}</p>
            {saved.before === undefined ? null : (
              <p className={styles.soft}>{t('ledger:wentOn', { size: saved.before })}</p>
            )}
          </>
        )}
      </div>
      <AlertLine sentence={error?.sentence} />
      <Button icon="away" isDisabled={folder.trim() === ''} onPress={() => void save()}>
        {t('ledger:save')}
      </Button>
    </section>
  );
};
