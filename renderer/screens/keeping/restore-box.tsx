/** Opens a backup, shows what restoring it would change, and restores it. */
import { useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useWork } from '../../station/use-work.ts';
import styles from './keeping.module.css';
import { openCalls } from './keeping-calls.ts';
import { RestoreDialog } from './restore-dialog.tsx';

export const RestoreBox = ({ folder }: { readonly folder: OutputOf<'keeping.show'>['folder'] }) => {
  const { t, dateText } = useText();
  const backups = folder.state === 'there' ? folder.backups : [];
  const [chosen, setChosen] = useState<string>();
  const [path, setPath] = useState('');
  const [isShown, setShown] = useState(false);
  const { status, error, isWorking, begin, cancel } = useWork(openCalls);
  const file = path.trim() === '' ? (chosen ?? backups[0]?.fileName) : path.trim();
  const refused = status?.state === 'refused' && !isWorking ? status.sentence : undefined;
  const ready = status?.state === 'ready' && !isWorking ? status : undefined;
  return (
    <section className={styles.box} aria-labelledby="restore">
      <h2 id="restore">{t('keeping:restore.title')}</h2>
      <p>{t('keeping:restore.text')}</p>
      {folder.state === 'there' && backups.length === 0 ? (
        <p className={styles.soft}>{t('keeping:restore.none')}</p>
      ) : null}
      {backups.length === 0 ? null : (
        <SelectInput
          label={t('keeping:restore.choose')}
          value={chosen ?? backups[0]?.fileName ?? ''}
          options={backups.map(({ fileName, on }) => ({
            value: fileName,
            label: `${dateText(on)} · ${fileName}`,
          }))}
          onChange={setChosen}
        />
      )}
      <TextInput
        label={t(backups.length === 0 ? 'keeping:restore.fileOnly' : 'keeping:restore.file')}
        value={path}
        onChange={setPath}
      />
      <div role="status">
        {isWorking ? (
          <p>{t('keeping:restore.opening', { done: status?.state === 'working' ? status.done : 0 })}</p>
        ) : null}
      </div>
      <AlertLine sentence={error?.sentence ?? refused} />
      <div className={styles.buttons}>
        <Button
          icon="register"
          isDisabled={file === undefined}
          isRunning={isWorking}
          onPress={() => {
            if (file === undefined) return;
            setShown(true);
            begin({ file });
          }}
        >
          {t('keeping:restore.open')}
        </Button>
        {isWorking ? <Button onPress={cancel}>{t('keeping:cancel')}</Button> : null}
      </div>
      {ready?.job === undefined || !isShown ? null : (
        <RestoreDialog job={ready.job} backup={ready} onClose={() => setShown(false)} />
      )}
    </section>
  );
};
