/** The weeks of the plan: how much is planned and how much the bench can take, drawn and in numbers. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { LoadBar } from './load-bar.tsx';
import styles from './schedule.module.css';
import { useHoursText } from './use-hours-text.ts';

type Week = OutputOf<'schedule.plan'>['weeks'][number];

export const WeekTable = ({ weeks }: { readonly weeks: readonly Week[] }) => {
  const { t, dateText } = useText();
  const hoursText = useHoursText();
  const most = Math.max(1, ...weeks.map(({ room }) => room));
  return (
    <table className={styles.table}>
      <caption className={styles.caption}>{t('schedule:weeks')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('schedule:week')}</th>
          <th scope="col" className={styles.barColumn}>
            {t('schedule:load')}
          </th>
          <th scope="col">{t('schedule:planned')}</th>
          <th scope="col">{t('schedule:room')}</th>
          <th scope="col">{t('schedule:note')}</th>
        </tr>
      </thead>
      <tbody>
        {weeks.map(({ from, until, planned, room, plannedHours, roomHours, overdue, closures }) => (
          <tr key={from} className={styles.row}>
            <th scope="row">
              <a className={styles.link} href={hashOf({ screen: 'schedule', week: from })}>
                {dateText(from)} – {dateText(until)}
              </a>
            </th>
            <td>
              <LoadBar planned={planned} room={room} most={most} />
            </td>
            <td>
              {planned} ({hoursText(plannedHours)} h)
            </td>
            <td>
              {room} ({hoursText(roomHours)} h)
            </td>
            <td>
              {overdue === 0 ? null : (
                <span className={styles.sign}>
                  <Icon name="late" />
                  {t('schedule:overdueHere', { count: overdue })}
                </span>
              )}
              {closures.map((closure) => (
                <span key={closure.from} className={styles.soft}>
                  {closure.name === undefined || closure.name === '' ? t('schedule:closed') : closure.name}
                </span>
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};
