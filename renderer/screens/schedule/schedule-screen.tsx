/** The schedule: whether the year fits the bench, what is planned week by week, and whom to call. */
import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useSignedIn } from '../../station/status.ts';
import { ReportDialog } from '../records/report-dialog.tsx';
import { CapacityDialog } from './capacity-dialog.tsx';
import { DueTable } from './due-table.tsx';
import { NoticeList } from './notice-list.tsx';
import { PlanSummary } from './plan-summary.tsx';
import styles from './schedule.module.css';
import { WeekTable } from './week-table.tsx';
import { WithoutPlan } from './without-plan.tsx';
import { WithoutRoom } from './without-room.tsx';

type Open = 'pick-list' | 'calendar' | 'notices' | 'reinspections' | 'capacity';

export const ScheduleScreen = () => {
  const { t } = useText();
  const [open, setOpen] = useState<Open>();
  const planning = useStationQuery('schedule.plan', {});
  const { data: plan, error } = planning;
  const week = plan?.weeks[0];
  const isAdministrator = useSignedIn()?.roles.includes('administrator') ?? false;
  const actions: readonly Open[] = isAdministrator
    ? ['pick-list', 'calendar', 'notices', 'capacity', 'reinspections']
    : ['pick-list', 'calendar', 'notices', 'reinspections'];
  const act = (action: Open): void => {
    if (action === 'reinspections') navigate({ screen: 'reinspections' });
    else setOpen(action);
  };

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || open !== undefined) return false;
    if (meaning.command === 'next' && week !== undefined) {
      navigate({ screen: 'schedule', week: week.from });
      return true;
    }
    const action = actions[Number(meaning.command) - 1];
    if (action === undefined) return false;
    act(action);
    return true;
  });

  if (plan === undefined || error !== undefined) return <WithoutPlan plan={planning} />;
  const close = (): void => setOpen(undefined);
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('schedule:title')}</h1>
        <div className={styles.buttons}>
          {actions.map((action, index) => (
            <Button key={action} number={index + 1} onPress={() => act(action)}>
              {t(`schedule:actions.${action}`)}
            </Button>
          ))}
        </div>
      </div>
      <PlanSummary plan={plan} />
      <WeekTable weeks={plan.weeks} />
      <WithoutRoom count={plan.counts.unplanned} />
      <DueTable number={actions.length + 1} isScanned={open === undefined} />
      <NoticeList />
      {open === 'pick-list' ? (
        <ReportDialog
          title={t('schedule:actions.pick-list')}
          of={{
            kind: 'bench-plan',
            ...(week === undefined ? {} : { from: week.from, until: week.until }),
          }}
          isList
          onClose={close}
        >
          <p>{t('schedule:pickListOfThisWeek')}</p>
        </ReportDialog>
      ) : null}
      {open === 'calendar' ? (
        <ReportDialog
          title={t('schedule:actions.calendar')}
          of={{ kind: 'bench-plan' }}
          onlyForm="ics"
          onClose={close}
        >
          <p>{t('schedule:calendarText')}</p>
        </ReportDialog>
      ) : null}
      {open === 'notices' ? (
        <ReportDialog title={t('schedule:actions.notices')} of={{ kind: 'notices' }} isList onClose={close} />
      ) : null}
      {open === 'capacity' ? <CapacityDialog capacity={plan.capacity} onClose={close} /> : null}
    </div>
  );
};
