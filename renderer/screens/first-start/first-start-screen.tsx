/** The first start: an empty data folder becomes the demo, or a station of one's own. */
import { useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { LookSwitches } from '../../navigation/header.tsx';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { RestoreBox } from '../keeping/restore-box.tsx';
import styles from './first-start.module.css';
import { SetUpForm } from './set-up-form.tsx';

export const FirstStartScreen = () => {
  const { t } = useText();
  const [way, setWay] = useState<'choosing' | 'set up' | 'restore'>('choosing');
  const loadDemo = useStationCommand('station.load-demo');
  const choosing = way === 'choosing' && !loadDemo.isRunning;

  useScanHandler(({ meaning }) => {
    if (!choosing || meaning.meaning !== 'command') return false;
    if (meaning.command === '1') void loadDemo.run({});
    else if (meaning.command === '2') setWay('set up');
    else if (meaning.command === '3') setWay('restore');
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
        {way === 'set up' ? <SetUpForm onBack={() => setWay('choosing')} /> : null}
        {way === 'restore' ? (
          <>
            <RestoreBox folder={{ state: 'not chosen' }} />
            <Button onPress={() => setWay('choosing')}>{t('keeping:first.back')}</Button>
          </>
        ) : null}
        {way === 'choosing' ? (
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
                  onPress={() => setWay('set up')}
                >
                  {t('screens:firstStart.emptyStart')}
                </Button>
              </section>
              <section className={styles.way} aria-labelledby="way-backup">
                <h2 id="way-backup">{t('keeping:first.title')}</h2>
                <p>{t('keeping:first.text')}</p>
                <Button
                  size="large"
                  number={3}
                  isRunning={loadDemo.isRunning}
                  onPress={() => setWay('restore')}
                >
                  {t('keeping:first.start')}
                </Button>
              </section>
            </div>
            <p className={styles.caution}>{t('screens:start.caution')}</p>
          </>
        ) : null}
      </main>
    </div>
  );
};
