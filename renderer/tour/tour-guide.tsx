/** One stop of the tour, in a strip of its own under the screen: it covers nothing, and goes on when its thing is done. */
import { useEffect, useRef, useState } from 'react';
import { Button } from '../components/button.tsx';
import { useText } from '../i18n/text.ts';
import { type Route, useRoute } from '../navigation/route.ts';
import { useScanHandler } from '../scan/scan.ts';
import { type ReadyStation, useReadyStation } from '../station/status.ts';
import { demoValues } from './demo-values.ts';
import styles from './tour.module.css';
import { isDone, stopNames, useTour } from './tour.ts';

export const TourGuide = () => {
  const { state } = useTour();
  const station = useReadyStation();
  const route = useRoute();
  const inspection = useWatchedInspection(route);
  if (station?.demo !== true || state.kind !== 'at' || state.isLeft) return null;
  return <Stop key={state.stop} number={state.stop} sight={{ station, route, inspection }} />;
};

/** The inspection that was last opened on the bench. */
const useWatchedInspection = (route: Route): number | undefined => {
  const [inspection, setInspection] = useState<number>();
  const opened = route.screen === 'bench' ? route.inspection : undefined;
  useEffect(() => {
    if (opened !== undefined) setInspection(opened);
  }, [opened]);
  return inspection;
};

interface StopProps {
  readonly number: number;
  readonly sight: {
    readonly station: ReadyStation;
    readonly route: Route;
    readonly inspection: number | undefined;
  };
}

const Stop = ({ number, sight }: StopProps) => {
  const { t } = useText();
  const { go, leave, end } = useTour();
  const name = stopNames[number] ?? 'sign-in';
  const isAtEnd = number === stopNames.length - 1;
  const done = isDone(name, sight);
  /** What was so already when the stop began was not done for it. */
  const wasDone = useRef(done);
  if (!done) wasDone.current = false;
  const isReallyDone = done && !wasDone.current;
  useEffect(() => {
    if (isReallyDone && !isAtEnd) go(number + 1);
  }, [isReallyDone, isAtEnd, go, number]);
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    switch (meaning.command) {
      case 'next':
        go(number + 1);
        return true;
      case 'back':
        go(number - 1);
        return true;
      case 'cancel':
        leave();
        return true;
      default:
        return false;
    }
  }, 'window');
  return (
    <aside className={styles.strip} aria-labelledby="tour-stop">
      <div className={styles.words} role="status">
        <span className={styles.count}>{t('tour:stopOf', { stop: number + 1, of: stopNames.length })}</span>
        <h2 id="tour-stop">{t(`tour:stop.${name}.title`)}</h2>
        <p>{t(`tour:stop.${name}.text`, demoValues)}</p>
      </div>
      <div className={styles.buttons}>
        {number === 0 ? null : <Button onPress={() => go(number - 1)}>{t('tour:back')}</Button>}
        {isAtEnd ? null : (
          <Button look="primary" onPress={() => go(number + 1)}>
            {t('tour:next')}
          </Button>
        )}
        <Button look={isAtEnd ? 'primary' : 'plain'} onPress={isAtEnd ? end : leave}>
          {t(isAtEnd ? 'tour:end' : 'tour:leave')}
        </Button>
      </div>
    </aside>
  );
};
