/** Exports everything into a folder of the data folder, and says where it is. */
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useWork } from '../../station/use-work.ts';
import styles from './exchange.module.css';
import { exportCalls } from './import-calls.ts';

export const ExportBox = () => {
  const { t } = useText();
  const { status, error, isWorking, begin, cancel } = useWork(exportCalls);
  const refused = status?.state === 'refused' && !isWorking ? status.sentence : undefined;
  return (
    <section className={styles.box} aria-labelledby="export">
      <h2 id="export">{t('exchange:exportTitle')}</h2>
      <p>{t('exchange:exportText')}</p>
      <div role="status">
        {isWorking && status?.state === 'working' ? (
          <p>{t('exchange:exporting', { done: status.done, of: status.of })}</p>
        ) : null}
        {!isWorking && status?.state === 'exported' ? (
          <>
            <p className={styles.sign}>
              <Icon name="check" />
              {t('exchange:exported', { events: status.events, files: status.files })}
            </p>
            <p className={styles.path}>{status.folder}</p>
          </>
        ) : null}
      </div>
      <AlertLine
        sentence={
          error?.sentence ??
          refused ??
          (status?.state === 'exported' && status.picturesLost > 0
            ? t('exchange:picturesLost', { count: status.picturesLost })
            : undefined)
        }
      />
      <div className={styles.buttons}>
        <Button icon="away" isRunning={isWorking} onPress={() => begin({})}>
          {t('exchange:export')}
        </Button>
        {isWorking ? <Button onPress={cancel}>{t('exchange:cancel')}</Button> : null}
      </div>
    </section>
  );
};
