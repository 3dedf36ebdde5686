/** The trend of the least diameter in words and as a chart; or why there is none. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { DiameterChart } from '../../drawing/diameter-chart.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './lifeline.module.css';

export const DiameterTrend = ({ lifeline }: { readonly lifeline: OutputOf<'lifeline.show'> }) => {
  const { t, diameterText } = useText();
  const { trend, lifelineMinimumDiameterMm: minimumMm } = lifeline;
  return (
    <section className={styles.box} aria-labelledby="trend">
      <h2 id="trend">{t('evidence:trend.title')}</h2>
      {minimumMm === undefined ? (
        <p>{t('evidence:trend.noMinimum')}</p>
      ) : trend.kind === 'too few' ? (
        <p>
          {t('evidence:trend.tooFew', { count: trend.points.length, needed: trend.needed })}{' '}
          <strong>{t('evidence:trend.decides')}</strong>
        </p>
      ) : (
        <>
          <p>
            {t('evidence:trend.change', {
              change: `${trend.changeMmPerYear < 0 ? '−' : '+'}${diameterText(Math.abs(trend.changeMmPerYear))}`,
            })}{' '}
            {t('evidence:trend.band')} <strong>{t('evidence:trend.decides')}</strong>
          </p>
          <DiameterChart trend={trend} minimumMm={minimumMm} />
        </>
      )}
    </section>
  );
};
