/** One week of the bench: its devices day by day. */
import { useState } from 'react';
import type { CalendarDate } from '../../../src/domain/brand.ts';
import { addDays } from '../../../src/domain/calendar.ts';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { ReportDialog } from '../records/report-dialog.tsx';
import { PlannedTable } from './planned-table.tsx';
import styles from './schedule.module.css';
import { WithoutPlan } from './without-plan.tsx';

export const WeekScreen = ({ week }: { readonly week: CalendarDate }) => {
  const { t, dateText } = useText();
  const [isPickList, setPickList] = useState(false);
  const plan = useStationQuery('schedule.plan', {});
  const weeks = plan.data?.weeks ?? [];
  const at = weeks.findIndex(({ from, until }) => from <= week && week <= until);
  const from = weeks[at]?.from ?? week;
  const until = weeks[at]?.until ?? addDays(week, 6);
  const { data, error } = useStationQuery(
    'schedule.devices',
    { of: { kind: 'days', from, until }, limit: 1000 },
    { enabled: plan.data !== undefined },
  );
  const earlier = weeks[at - 1];
  const later = weeks[at + 1];
  const leave = (): void => navigate({ screen: 'schedule' });
  const open = (shown: typeof earlier): void => {
    if (shown !== undefined) navigate({ screen: 'schedule', week: shown.from });
  };
  const commands: Partial<Record<CommandName, () => void>> = {
    1: () => setPickList(true),
    back: () => open(earlier),
    next: () => open(later),
    cancel: leave,
  };
  useScanHandler(({ meaning }) => {
    const run = meaning.meaning === 'command' && !isPickList ? commands[meaning.command] : undefined;
    run?.();
    return run !== undefined;
  });

  if (plan.data === undefined || plan.error !== undefined) return <WithoutPlan plan={plan} />;
  if (error !== undefined) return <StationError error={error} />;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('schedule:weekTitle', { from: dateText(from), until: dateText(until) })}</h1>
        <div className={styles.buttons}>
          <Button number={1} onPress={() => setPickList(true)}>
            {t('schedule:actions.pick-list')}
          </Button>
          <Button isDisabled={earlier === undefined} onPress={() => open(earlier)}>
            {t('schedule:earlier')}
          </Button>
          <Button isDisabled={later === undefined} onPress={() => open(later)}>
            {t('schedule:later')}
          </Button>
          <Button icon="clock" onPress={leave}>
            {t('schedule:toSchedule')}
          </Button>
        </div>
      </div>
      {data === undefined ? (
        <p role="status">{t('screens:app.loading')}</p>
      ) : data.total === 0 ? (
        <p>{t('schedule:nothing')}</p>
      ) : (
        <PlannedTable devices={data.devices} caption={t('schedule:devices', { count: data.total })} />
      )}
      {isPickList ? (
        <ReportDialog
          title={t('schedule:actions.pick-list')}
          of={{ kind: 'bench-plan', from, until }}
          isList
          onClose={() => setPickList(false)}
        />
      ) : null}
    </div>
  );
};
