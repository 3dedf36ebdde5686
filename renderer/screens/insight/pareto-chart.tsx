/** Which parts make most of the removals: bars, the most frequent first, with the numbers beside them as a table. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import styles from './insight.module.css';
import { usePercent } from './use-percent.ts';

type Reasons = OutputOf<'insight.show'>['groups'][number]['reasons'];

export interface ParetoChartProps {
  readonly reasons: Reasons;
  /** The heading that names the table. */
  readonly labelledBy: string;
}

export const ParetoChart = ({ reasons, labelledBy }: ParetoChartProps) => {
  const { t } = useText();
  const percent = usePercent();
  const most = reasons[0]?.count ?? 1;
  return (
    <table className={styles.table} aria-labelledby={labelledBy}>
      <thead>
        <tr>
          <th scope="col">{t('insight:part')}</th>
          <th scope="col">{t('insight:bar')}</th>
          <th scope="col" className={styles.number}>
            {t('insight:reasons')}
          </th>
          <th scope="col" className={styles.number}>
            {t('insight:share')}
          </th>
          <th scope="col" className={styles.number}>
            {t('insight:cumulative')}
          </th>
        </tr>
      </thead>
      <tbody>
        {reasons.map(({ key, count, share, cumulative }) => (
          <tr key={key}>
            <th scope="row">{t(`walk:zone.${key}`)}</th>
            <td className={styles.barCell}>
              <div className={styles.bar} style={{ inlineSize: `${(count / most) * 100}%` }} />
            </td>
            <td className={styles.number}>{count}</td>
            <td className={styles.number}>{percent(share)}</td>
            <td className={styles.number}>{percent(cumulative)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};
