/** While the plan of the bench is made: how far it is, where that takes a while, and a way to stop it. */
import { useEffect, useState } from 'react';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { call } from '../../station/client.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './schedule.module.css';

/** A plan of a usual fleet is there before. */
const everyMs = 400;

export const Planning = () => {
  const { t } = useText();
  const [isSlow, setSlow] = useState(false);
  const { data } = useStationQuery('schedule.planning', {}, { enabled: isSlow, everyMs });
  useEffect(() => {
    const timer = window.setTimeout(() => setSlow(true), everyMs);
    return () => window.clearTimeout(timer);
  }, []);
  const isUnderWay = data?.state === 'working';
  const stop = (): void => void call('schedule.plan-cancel', {});
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'cancel' || !isUnderWay) return false;
    stop();
    return true;
  });
  return (
    <div className={styles.planning}>
      <h1>{t('schedule:title')}</h1>
      <p role="status">
        {isUnderWay ? t('schedule:planning', { done: data.done, of: data.of }) : t('screens:app.loading')}
      </p>
      {isUnderWay ? (
        <>
          <progress
            className={styles.progress}
            value={data.done}
            max={data.of}
            aria-label={t('schedule:title')}
          />
          <Button onPress={stop}>{t('schedule:stopPlanning')}</Button>
        </>
      ) : null}
    </div>
  );
};
