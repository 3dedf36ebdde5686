/** Kappa, row by row, from −1 over 0, where chance alone would do, to 1. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import styles from './insight.module.css';
import { usePercent } from './use-percent.ts';

export interface AgreementTableProps {
  /** The heading that names the table. */
  readonly labelledBy: string;
  readonly rows: readonly {
    readonly key: string;
    readonly name: string;
    readonly agreement: OutputOf<'insight.agreement'>['verdict'];
  }[];
}

export const AgreementTable = ({ labelledBy, rows }: AgreementTableProps) => {
  const { t, language } = useText();
  const percent = usePercent();
  const twoDigits = new Intl.NumberFormat(language === 'es' ? 'es-ES' : 'en-GB', {
    minimumFractionDigits: 2,
    maximumFractionDigits: 2,
  });
  const text = (value: number): string => twoDigits.format(value);
  return (
    <table className={styles.table} aria-labelledby={labelledBy}>
      <thead>
        <tr>
          <th scope="col">{t('insight:agreement.on')}</th>
          <th scope="col">{t('insight:agreement.bar')}</th>
          {(['pairs', 'observed', 'expected', 'kappa', 'interval'] as const).map((column) => (
            <th key={column} scope="col" className={styles.number}>
              {t(`insight:agreement.column.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, name, agreement: { pairs, observed, expected, kappa, lower, upper } }) => (
          <tr key={key}>
            <th scope="row">{name}</th>
            <td className={styles.barCell}>
              {kappa === undefined ? null : (
                <div className={styles.range}>
                  <div className={styles.zero} />
                  <div
                    className={styles.spread}
                    style={{
                      insetInlineStart: `${placeOf(lower ?? kappa)}%`,
                      inlineSize: `${placeOf(upper ?? kappa) - placeOf(lower ?? kappa)}%`,
                    }}
                  />
                  <div className={styles.mark} style={{ insetInlineStart: `${placeOf(kappa)}%` }} />
                </div>
              )}
            </td>
            <td className={styles.number}>{pairs}</td>
            <td className={styles.number}>{percent(observed)}</td>
            <td className={styles.number}>{percent(expected)}</td>
            <td className={styles.number}>
              {kappa === undefined ? t('insight:agreement.unknown') : text(kappa)}
            </td>
            <td className={styles.number}>
              {lower === undefined || upper === undefined
                ? t('insight:agreement.noInterval')
                : t('insight:interval', { lower: text(lower), upper: text(upper) })}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

/** Per cent of the way from −1 to 1. */
const placeOf = (kappa: number): number => (kappa + 1) * 50;
