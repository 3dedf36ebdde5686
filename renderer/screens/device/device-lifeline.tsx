/** The way from a device to the map of its lifeline, with what the readings of its diameter say in one line. */
import type { BenchId } from '../../../src/domain/brand.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './device.module.css';

export const DeviceLifeline = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t, diameterText, dateText } = useText();
  const { data } = useStationQuery('lifeline.show', { benchId });
  const latest = data?.trend.points.at(-1);
  return (
    <section className={styles.detail} aria-labelledby="lifeline">
      <h2 id="lifeline">{t('evidence:map.short')}</h2>
      <p className={styles.soft}>
        {latest === undefined
          ? t('evidence:map.noReadings')
          : t('evidence:map.latest', {
              diameter: diameterText(latest.diameterMm),
              date: dateText(latest.on),
            })}
      </p>
      <div className={styles.buttons}>
        <Button icon="measure" onPress={() => navigate({ screen: 'lifeline', benchId })}>
          {t('evidence:map.show')}
        </Button>
      </div>
    </section>
  );
};
