/** The station itself: what it is called, its printed sheets, when its windows are locked, and the proof of its record. */
import { useText } from '../../i18n/text.ts';
import { useReadyStation } from '../../station/status.ts';
import { BenchCard } from './bench-card.tsx';
import { BinLabel } from './bin-label.tsx';
import { CheckpointBox } from './checkpoint-box.tsx';
import { CommandSheet } from './command-sheet.tsx';
import { KeptPictures } from './kept-pictures.tsx';
import styles from './setup.module.css';
import { UnattendedBox } from './unattended-box.tsx';
import { VerifyRecord } from './verify-record.tsx';

export const StationPanel = () => {
  const { t } = useText();
  const station = useReadyStation();
  if (station === undefined) return null;
  return (
    <div className={styles.panels}>
      <CommandSheet />
      <BenchCard />
      <BinLabel />
      <UnattendedBox />
      <VerifyRecord />
      <CheckpointBox />
      <KeptPictures />
      <section className={styles.box} aria-labelledby="facts">
        <h2 id="facts">{t('screens:setup.facts')}</h2>
        <dl className={styles.facts}>
          <dt>{t('screens:setup.factsName')}</dt>
          <dd>{station.name}</dd>
          <dt>{t('screens:setup.factsZone')}</dt>
          <dd>{station.timeZone.replaceAll('_', ' ')}</dd>
          <dt>{t('screens:setup.factsUnit')}</dt>
          <dd>{t(station.lengthUnit === 'm' ? 'screens:firstStart.metres' : 'screens:firstStart.feet')}</dd>
          <dt>{t('screens:setup.factsDevices')}</dt>
          <dd>{station.counts.devices}</dd>
        </dl>
        <p className={styles.soft}>{t('screens:start.caution')}</p>
      </section>
    </div>
  );
};
