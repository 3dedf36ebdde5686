/** The first start: an empty data folder becomes the demo, or a station of one's own. */
import { useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { LookSwitches } from '../../navigation/header.tsx';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './first-start.module.css';
import { SetUpForm } from './set-up-form.tsx';

export const FirstStartScreen = () => {
  const { t } = useText();
  const [isSettingUp, setSettingUp] = useState(false);
  const loadDemo = useStationCommand('station.load-demo');
  const choosing = !isSettingUp && !loadDemo.isRunning;

  useScanHandler(({ meaning }) => {
    if (!choosing || meaning.meaning !== 'command') return false;
    if (meaning.command === '1') void loadDemo.run({});
    else if (meaning.command === '2') setSettingUp(true);
    else return false;
    return true;
  });

  return (
    <div className={styles.window}>
      <header className={styles.head}>
        <span className={styles.product}>{t('screens:app.name')}</span>
        <LookSwitches />
      </header>
      <main className={styles.main}>
        {isSettingUp ? (
          <SetUpForm onBack={() => setSettingUp(false)} />
        ) : (
          <>
            <h1>{t('screens:firstStart.title')}</h1>
            <p className={styles.lead}>{t('screens:firstStart.text')}</p>
            <AlertLine sentence={loadDemo.error?.sentence} />
            <div className={styles.ways}>
              <section className={styles.way} aria-labelledby="way-demo">
                <h2 id="way-demo">{t('screens:firstStart.demo')}</h2>
                {loadDemo.isRunning ? (
                  <div className={styles.progress} role="status">
                    <div className={styles.bar} aria-hidden="true" />
                    <p>{t('screens:firstStart.demoLoading')}</p>
                  </div>
                ) : (
                  <>
                    <p>{t('screens:firstStart.demoText')}</p>
                    <Button look="primary" size="large" number={1} onPress={() => void loadDemo.run({})}>
                      {t('screens:firstStart.demoStart')}
                    </Button>
                  </>
                )}
              </section>
              <section className={styles.way} aria-labelledby="way-empty">
                <h2 id="way-empty">{t('screens:firstStart.empty')}</h2>
                <p>{t('screens:firstStart.emptyText')}</p>
                <Button
                  size="large"
                  number={2}
                  isRunning={loadDemo.isRunning}
                  onPress={() => setSettingUp(true)}
                >
                  {t('screens:firstStart.emptyStart')}
                </Button>
              </section>
            </div>
            <p className={styles.caution}>{t('screens:start.caution')}</p>
          </>
        )}
      </main>
    </div>
  );
};
