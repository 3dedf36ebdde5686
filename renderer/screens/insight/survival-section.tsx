/** How long devices last until their first removal: the curve, its numbers, and how many devices it rests on. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import styles from './insight.module.css';
import { SurvivalChart } from './survival-chart.tsx';
import { usePercent } from './use-percent.ts';

type Survival = OutputOf<'insight.show'>['survival'];

export interface SurvivalSectionProps {
  readonly survival: Survival;
  readonly fewDevices: number;
}

export const SurvivalSection = ({ survival, fewDevices }: SurvivalSectionProps) => {
  const { t } = useText();
  const percent = usePercent();
  const { steps, devices, removed, median } = survival;
  return (
    <section className={styles.section} aria-labelledby="survival">
      <h2 id="survival">{t('insight:survival.title')}</h2>
      <p>{t('insight:survival.text')}</p>
      <p className={styles.rests}>{t('insight:survival.rests', { devices, removed })}</p>
      {devices < fewDevices ? <p className={styles.few}>{t('insight:few', { count: devices })}</p> : null}
      {steps.length === 0 ? (
        <p>{t('insight:survival.none')}</p>
      ) : (
        <>
          <SurvivalChart survival={survival} />
          <p>
            {median === undefined
              ? t('insight:survival.noMedian')
              : t('insight:survival.median', { days: median })}
          </p>
          <table className={styles.table} aria-labelledby="survival">
            <thead>
              <tr>
                {(['day', 'atRisk', 'removed', 'left', 'band'] as const).map((column) => (
                  <th key={column} scope="col" className={styles.number}>
                    {t(`insight:survival.column.${column}`)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {steps.map((step) => (
                <tr key={step.time}>
                  <td className={styles.number}>{step.time}</td>
                  <td className={styles.number}>{step.atRisk}</td>
                  <td className={styles.number}>{step.removed}</td>
                  <td className={styles.number}>{percent(step.survival)}</td>
                  <td className={styles.number}>
                    {t('insight:interval', { lower: percent(step.lower), upper: percent(step.upper) })}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
};
