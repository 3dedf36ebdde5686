/** What the plan comes to: it fits, or how many hours are missing and by when. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './schedule.module.css';
import { useHoursText } from './use-hours-text.ts';

export const PlanSummary = ({ plan }: { readonly plan: OutputOf<'schedule.plan'> }) => {
  const { t, dateText } = useText();
  const hoursText = useHoursText();
  const { counts, shortages, keepsEveryDueDate, isCapacitySet } = plan;
  return (
    <section className={styles.summary} aria-label={t('schedule:summary')}>
      <p className={styles.verdict}>
        <Icon name={keepsEveryDueDate ? 'check' : 'warning'} />
        {keepsEveryDueDate
          ? t('schedule:fits', { until: dateText(plan.until) })
          : t('schedule:short', {
              hours: hoursText(plan.missingHours),
              until: dateText(shortages[0]?.until ?? plan.until),
            })}
      </p>
      {shortages.map(({ from, until, inspections, room, missingHours }) => (
        <p key={from}>
          {t('schedule:shortage', {
            from: dateText(from),
            until: dateText(until),
            inspections,
            room,
            hours: hoursText(missingHours),
          })}
        </p>
      ))}
      <p>
        {counts.overdue === 0
          ? t('schedule:noneOverdue')
          : plan.overdueUntil === undefined
            ? t('schedule:overdue', { count: counts.overdue })
            : t('schedule:overdueUntil', { count: counts.overdue, date: dateText(plan.overdueUntil) })}{' '}
        {counts.neverInspected === 0 ? null : t('schedule:never', { count: counts.neverInspected })}
      </p>
      <p className={styles.soft}>
        {t('schedule:lost', { count: plan.daysLost })}{' '}
        {plan.earliestDays > plan.capacity.mostDaysEarly
          ? t('schedule:widened', { days: plan.earliestDays, chosen: plan.capacity.mostDaysEarly })
          : t('schedule:atMost', { days: plan.earliestDays })}{' '}
        {isCapacitySet ? null : t('schedule:assumed')}
      </p>
    </section>
  );
};
