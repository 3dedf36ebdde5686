/** What comes due, month by month or week by week, whenever the bench does it; what is overdue comes first. */
import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { LoadBar } from './load-bar.tsx';
import styles from './schedule.module.css';

export interface DueTableProps {
  /** The number on the button that changes between months and weeks, and of the command that does the same. */
  readonly number: number;
  /** False while a dialog is open, which takes what is scanned. */
  readonly isScanned: boolean;
}

export const DueTable = ({ number, isScanned }: DueTableProps) => {
  const { t, dateText, monthText } = useText();
  const [by, setBy] = useState<'month' | 'week'>('month');
  const { data } = useStationQuery('schedule.due', { by }, { keepPrevious: true });
  const change = (): void => setBy(by === 'month' ? 'week' : 'month');
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || !isScanned || Number(meaning.command) !== number) return false;
    change();
    return true;
  });
  if (data === undefined) return null;
  const { overdue, neverInspected, periods } = data;
  const most = Math.max(1, overdue, neverInspected, ...periods.map(({ due }) => due));
  const isByMonth = periods.every(({ from }) => from.endsWith('-01'));
  const rows = [
    ...(overdue === 0
      ? []
      : [{ key: 'overdue', icon: 'late' as const, name: t('schedule:overdueNow'), due: overdue }]),
    ...(neverInspected === 0
      ? []
      : [{ key: 'never', icon: 'blank' as const, name: t('schedule:neverInspected'), due: neverInspected }]),
    ...periods.map(({ from, until, due }) => ({
      key: from,
      icon: undefined,
      name: isByMonth ? monthText(from) : `${dateText(from)} – ${dateText(until)}`,
      due,
    })),
  ];
  return (
    <section className={styles.due} aria-labelledby="schedule-due">
      <div className={styles.head}>
        <h2 id="schedule-due">{t('schedule:dueTitle')}</h2>
        <Button number={number} onPress={change}>
          {t(by === 'month' ? 'schedule:byWeek' : 'schedule:byMonth')}
        </Button>
      </div>
      <table className={styles.table} aria-labelledby="schedule-due">
        <thead>
          <tr>
            <th scope="col">{t(isByMonth ? 'schedule:month' : 'schedule:week')}</th>
            <th scope="col">{t('schedule:comesDue')}</th>
            <th scope="col" className={styles.wideBarColumn}>
              {t('schedule:share')}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, icon, name, due }) => (
            <tr key={key}>
              <th scope="row">
                {icon === undefined ? (
                  name
                ) : (
                  <span className={styles.sign}>
                    <Icon name={icon} />
                    {name}
                  </span>
                )}
              </th>
              <td>{due}</td>
              <td>
                <LoadBar planned={due} room={0} most={most} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};
