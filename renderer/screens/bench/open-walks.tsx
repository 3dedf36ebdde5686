/** Inspections that were begun at the bench and not yet signed. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import type { ReadyStation } from '../../station/status.ts';
import styles from './open-walks.module.css';

export const OpenWalks = ({ open }: { readonly open: ReadyStation['open'] }) => {
  const { t } = useText();
  return (
    <section className={styles.section}>
      <h2>{t(open.length === 0 ? 'walk:idle.none' : 'walk:idle.open')}</h2>
      <ul className={styles.list}>
        {open.map(({ inspection, device, answered }) => (
          <li key={inspection} className={styles.walk}>
            <span className={styles.words}>
              <strong>{formatBenchId(device.benchId)}</strong>
              <span>
                {device.manufacturer} {device.model}, {device.serial}
              </span>
              <span className={styles.soft}>{t('walk:idle.progress', { answered })}</span>
            </span>
            <Button icon="forward" onPress={() => navigate({ screen: 'bench', inspection })}>
              {t('walk:idle.resume')}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
};
