/** On the start screen: that the record is not backed up. */
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import type { ReadyStation } from '../../station/status.ts';
import styles from './keeping.module.css';

/** A depot to try things out is not backed up by anybody. */
export const BackupNotice = ({ station }: { readonly station: ReadyStation }) => {
  const { t } = useText();
  const { backup, demo, person } = station;
  if (backup === 'kept' || (backup === 'not set up' && demo) || person === undefined) return null;
  return (
    <section className={styles.notice} aria-labelledby="backup-notice">
      <h2 id="backup-notice" className={styles.sign}>
        <Icon name="late" />
        {t('keeping:notice.title')}
      </h2>
      <p>{t(`keeping:notice.${backup}`)}</p>
      <Button onPress={() => navigate({ screen: 'setup', panel: 'keeping' })}>
        {t('keeping:notice.open')}
      </Button>
    </section>
  );
};
