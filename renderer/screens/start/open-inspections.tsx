/** Inspections that were begun and not yet signed, to go on with. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import type { ReadyStation } from '../../station/status.ts';
import styles from './start.module.css';
import { useCheckCount } from './use-check-count.ts';

export const OpenInspections = ({ open }: { readonly open: ReadyStation['open'] }) => {
  const { t } = useText();
  const total = useCheckCount();
  return (
    <section className={styles.section} aria-labelledby="open-inspections">
      <h2 id="open-inspections">{t('screens:start.open')}</h2>
      {open.length === 0 ? <p>{t('screens:start.noOpen')}</p> : null}
      <ul className={styles.list}>
        {open.map(({ inspection, device, answered }) => (
          <li key={inspection} className={styles.open}>
            <div className={styles.openText}>
              <span className={styles.benchId}>{formatBenchId(device.benchId)}</span>
              <span>
                {device.manufacturer} {device.model}, {device.serial}
              </span>
              <span className={styles.soft}>{t('screens:start.answered', { count: answered, total })}</span>
            </div>
            <Button look="primary" icon="forward" onPress={() => navigate({ screen: 'bench', inspection })}>
              {t('screens:start.resume', { inspection })}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
};
