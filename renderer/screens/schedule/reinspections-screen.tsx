/** Blind second inspections: which devices wait for one, what came of the others, and the next draw. */
import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { DrawDialog } from './draw-dialog.tsx';
import { ReinspectionPairs } from './reinspection-pairs.tsx';
import styles from './schedule.module.css';
import { WaitingReinspections } from './waiting-reinspections.tsx';

export const ReinspectionsScreen = () => {
  const { t } = useText();
  const [isDrawing, setDrawing] = useState(false);
  const { data, error } = useStationQuery('reinspection.list', {});
  const canDraw = (data?.drawable ?? 0) > 0;
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || isDrawing) return false;
    if (meaning.command === '1' && canDraw) setDrawing(true);
    else if (meaning.command === '2') navigate({ screen: 'insight' });
    else if (meaning.command === 'cancel') navigate({ screen: 'schedule' });
    else return false;
    return true;
  });
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('schedule:blind.title')}</h1>
        <div className={styles.buttons}>
          <Button number={1} look="primary" isDisabled={!canDraw} onPress={() => setDrawing(true)}>
            {t('schedule:blind.draw')}
          </Button>
          <Button number={2} onPress={() => navigate({ screen: 'insight' })}>
            {t('schedule:blind.toInsight')}
          </Button>
          <Button icon="clock" onPress={() => navigate({ screen: 'schedule' })}>
            {t('schedule:blind.toSchedule')}
          </Button>
        </div>
      </div>
      <section className={styles.summary}>
        <p>{t('schedule:blind.text', { days: data.withinDays })}</p>
        <p className={styles.soft}>
          {t(data.isDaysByProgram ? 'schedule:blind.daysByProgram' : 'schedule:blind.daysUsual', {
            days: data.withinDays,
          })}
        </p>
        <p>{t('schedule:blind.drawable', { count: data.drawable })}</p>
      </section>
      <WaitingReinspections waiting={data.waiting} />
      <ReinspectionPairs signed={data.signed} pairs={data.pairs} />
      {isDrawing ? <DrawDialog drawable={data.drawable} onClose={() => setDrawing(false)} /> : null}
    </div>
  );
};
