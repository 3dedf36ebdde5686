/** The rows of the register; only those in sight exist. */
import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useRef } from 'react';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import type { ChoiceOfDevices } from './choice-of-devices.ts';
import { DeviceRow } from './device-row.tsx';
import styles from './register.module.css';

export interface DeviceTableProps {
  readonly total: number;
  deviceAt(row: number): DeviceSummary | undefined;
  /** Told which row is at the top. */
  onFirstRow(row: number): void;
  readonly choice: ChoiceOfDevices;
}

const columns = ['benchId', 'model', 'serial', 'length', 'standing', 'due'] as const;

export const DeviceTable = ({ total, deviceAt, onFirstRow, choice }: DeviceTableProps) => {
  const { t } = useText();
  const scroller = useRef<HTMLDivElement>(null);
  const rows = useVirtualizer({
    count: total,
    getScrollElement: () => scroller.current,
    estimateSize: () => rowHeight(),
    overscan: 8,
  });
  const inSight = rows.getVirtualItems();
  const first = inSight[0]?.index ?? 0;
  useEffect(() => onFirstRow(first), [first, onFirstRow]);

  return (
    <div className={styles.scroller} ref={scroller}>
      <table
        className={classes(styles.table, choice.chosen !== undefined && styles.picking)}
        aria-label={t('screens:register.title')}
        aria-rowcount={total + 1}
      >
        <thead className={styles.head}>
          <tr className={styles.columns} aria-rowindex={1}>
            {columns.map((column) => (
              <th key={column} scope="col">
                {t(`screens:register.columns.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody className={styles.rows} style={{ height: rows.getTotalSize() }}>
          {inSight.map((item) => (
            <DeviceRow
              key={item.key}
              row={item.index}
              top={item.start}
              height={item.size}
              device={deviceAt(item.index)}
              choice={choice}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
};

/** 56 px at the text size of the smaller windows. */
const rowHeight = (): number => 3.5 * Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
