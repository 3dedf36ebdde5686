/** The lifeline of a device over its life: the map of every inspection, newest first, and the trend of its diameter. */
import type { BenchId } from '../../../src/domain/brand.ts';
import { StationError } from '../../components/station-error.tsx';
import { LifelineMap } from '../../drawing/lifeline-map.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { DiameterTrend } from './diameter-trend.tsx';
import styles from './lifeline.module.css';
import { MapLegend } from './map-legend.tsx';
import { useHeadingOf } from './use-heading-of.ts';

export const LifelineScreen = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t, lengthText } = useText();
  const device = useStationQuery('device.show', { benchId });
  const { data, error } = useStationQuery('lifeline.show', { benchId });
  const headingOf = useHeadingOf();
  if (data === undefined || device.data === undefined) {
    const failed = error ?? device.error;
    return failed === undefined ? (
      <p role="status">{t('screens:app.loading')}</p>
    ) : (
      <StationError error={failed} />
    );
  }
  const { manufacturer, model, serial } = device.data.device;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('evidence:map.title', { device: `${manufacturer} ${model}`, serial })}</h1>
        <a className={styles.link} href={hashOf({ screen: 'device', benchId })}>
          {t('evidence:map.toDevice')}
        </a>
      </div>
      <DiameterTrend lifeline={data} />
      <section className={styles.box} aria-labelledby="map">
        <h2 id="map">{t('evidence:map.heading', { length: lengthText(data.ratedLengthM) })}</h2>
        {data.inspections.length === 0 ? (
          <p>{t('evidence:map.none')}</p>
        ) : (
          <>
            <MapLegend />
            <LifelineMap
              ratedLengthM={data.ratedLengthM}
              minimumDiameterMm={data.lifelineMinimumDiameterMm}
              inspections={data.inspections}
              headingOf={headingOf}
            />
          </>
        )}
      </section>
    </div>
  );
};
