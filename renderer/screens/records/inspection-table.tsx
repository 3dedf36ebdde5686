/** Signed inspections in rows; each leads to its answers. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import styles from './records.module.css';
import { VerdictMark } from './verdict-mark.tsx';

export type InspectionLine = OutputOf<'inspection.list'>['inspections'][number];

const columns = ['number', 'date', 'device', 'verdict', 'by'] as const;

export const InspectionTable = ({ inspections }: { readonly inspections: readonly InspectionLine[] }) => {
  const { t, dateText } = useText();
  return (
    <table className={styles.table} aria-label={t('records:title')}>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {t(`records:column.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {inspections.map((line) => (
          <tr key={line.inspection} className={styles.row}>
            <td>
              <a
                className={styles.link}
                href={hashOf({ screen: 'record', inspection: line.inspection })}
                aria-label={t('records:open', { inspection: line.inspection })}
              >
                {line.inspection}
              </a>
            </td>
            <td>{dateText(line.signedOn)}</td>
            <td>
              <span className={styles.benchId}>{formatBenchId(line.benchId)}</span> {line.manufacturer}{' '}
              {line.model}
            </td>
            <td>
              <VerdictMark verdict={line.verdict} reasons={line.reasons} />
              {line.reinspection === undefined ? null : (
                <div className={styles.count}>{t('schedule:blind.note')}</div>
              )}
            </td>
            <td>{line.signedBy}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};
