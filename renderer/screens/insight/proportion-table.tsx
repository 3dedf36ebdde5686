/** The share of devices that were ever removed, by group, with its interval. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import styles from './insight.module.css';
import { usePercent } from './use-percent.ts';

export interface ProportionTableProps {
  readonly groups: OutputOf<'insight.show'>['groups'];
  nameOf(value: string): string;
}

export const ProportionTable = ({ groups, nameOf }: ProportionTableProps) => {
  const { t } = useText();
  const percent = usePercent();
  return (
    <table className={styles.table} aria-labelledby="proportions">
      <thead>
        <tr>
          <th scope="col">{t('insight:proportion.group')}</th>
          <th scope="col">{t('insight:bar')}</th>
          <th scope="col" className={styles.number}>
            {t('insight:proportion.devices')}
          </th>
          <th scope="col" className={styles.number}>
            {t('insight:proportion.removed')}
          </th>
          <th scope="col" className={styles.number}>
            {t('insight:share')}
          </th>
          <th scope="col" className={styles.number}>
            {t('insight:proportion.interval')}
          </th>
        </tr>
      </thead>
      <tbody>
        {groups.map(({ value, devices, removed }) => (
          <tr key={value}>
            <th scope="row">{nameOf(value)}</th>
            <td className={styles.barCell}>
              <div className={styles.range}>
                <div
                  className={styles.spread}
                  style={{
                    insetInlineStart: `${removed.lower * 100}%`,
                    inlineSize: `${(removed.upper - removed.lower) * 100}%`,
                  }}
                />
                <div className={styles.mark} style={{ insetInlineStart: `${removed.share * 100}%` }} />
              </div>
            </td>
            <td className={styles.number}>{devices}</td>
            <td className={styles.number}>{removed.count}</td>
            <td className={styles.number}>{percent(removed.share)}</td>
            <td className={styles.number}>
              {t('insight:interval', { lower: percent(removed.lower), upper: percent(removed.upper) })}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};
