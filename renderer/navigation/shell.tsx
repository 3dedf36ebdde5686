/** The window of a station that is set up: header, navigation, and the screen of the route. */
import { useDeferredValue } from 'react';
import { CameraProvider } from '../camera/camera-provider.tsx';
import { useText } from '../i18n/text.ts';
import { WindowScans } from '../scan/window-scans.tsx';
import { InStep } from '../station/in-step.tsx';
import { TourGuide } from '../tour/tour-guide.tsx';
import { CurrentScreen } from './current-screen.tsx';
import { Header } from './header.tsx';
import { Navigation } from './navigation.tsx';
import styles from './shell.module.css';
import { ShellNotices } from './shell-notices.tsx';

export const Shell = () => {
  const { t } = useText();
  // The scanner is listened to before the first screen is drawn.
  const isScreenDue = useDeferredValue(true, false);
  return (
    <CameraProvider>
      <div className={styles.shell}>
        <button type="button" className={styles.skip} onClick={skipToScreen}>
          {t('screens:app.skip')}
        </button>
        <Header />
        <ShellNotices />
        <Navigation />
        <main id="screen" className={styles.screen} tabIndex={-1}>
          {isScreenDue ? <CurrentScreen /> : null}
        </main>
        <TourGuide />
        <WindowScans />
        <InStep />
      </div>
    </CameraProvider>
  );
};

const skipToScreen = (): void => {
  document.getElementById('screen')?.focus();
};
