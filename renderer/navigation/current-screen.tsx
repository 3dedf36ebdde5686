/** The screen that belongs to the route. */
import { useEffect, useState } from 'react';
import { AlertLine } from '../components/alert-line.tsx';
import { Button } from '../components/button.tsx';
import { useText } from '../i18n/text.ts';
import { StartScreen } from '../screens/start/start-screen.tsx';
import { hashOf, type LaterRoute, useRoute } from './route.ts';
import { useFocusOnScreen } from './use-focus-on-screen.ts';

export const CurrentScreen = () => {
  const route = useRoute();
  useFocusOnScreen(hashOf(route));
  useEffect(() => {
    loadLaterScreens().catch(() => undefined);
  }, []);
  return route.screen === 'start' ? <StartScreen /> : <Later route={route} />;
};

type LaterScreens = typeof import('./later-screens.tsx');

let laterScreens: LaterScreens | undefined;

/** A window is ready for its first scan before the screens that come after it are read. */
const loadLaterScreens = async (): Promise<LaterScreens> => {
  laterScreens ??= await import('./later-screens.tsx');
  return laterScreens;
};

const Later = ({ route }: { readonly route: LaterRoute }) => {
  const { t } = useText();
  const [screens, setScreens] = useState(laterScreens);
  const [isLost, setLost] = useState(false);
  useEffect(() => {
    if (screens === undefined) loadLaterScreens().then(setScreens, () => setLost(true));
  }, [screens]);
  if (screens !== undefined) return <screens.LaterScreen route={route} />;
  if (!isLost) return null;
  return (
    <div>
      <AlertLine sentence={t('screens:errors.stationUnreachable')} />
      <Button look="primary" onPress={() => window.location.reload()}>
        {t('screens:app.retry')}
      </Button>
    </div>
  );
};
