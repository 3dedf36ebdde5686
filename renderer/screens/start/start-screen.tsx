/** The start screen: what to do now, the numbers of the day, and what was left open. */
import { DemoBadges } from '../../components/demo-badges.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useReadyStation } from '../../station/status.ts';
import { TourOffer } from '../../tour/tour-offer.tsx';
import { OpenCases } from '../identity/open-cases.tsx';
import { BackupNotice } from '../keeping/backup-notice.tsx';
import { NoticesLine } from '../notices/notices-line.tsx';
import { DayCounts } from './day-counts.tsx';
import { EmptyRegister } from './empty-register.tsx';
import { OpenInspections } from './open-inspections.tsx';
import { PinNotices } from './pin-notices.tsx';
import styles from './start.module.css';
import { TrainingNotices } from './training-notices.tsx';

export const StartScreen = () => {
  const { t, dateText } = useText();
  const station = useReadyStation();
  if (station === undefined) return null;
  return (
    <div className={styles.screen}>
      <section className={styles.now}>
        <Icon name="scan" large />
        <div>
          <h1 className={styles.title}>{t('screens:start.title')}</h1>
          <p>{t('screens:start.hint')}</p>
        </div>
        <p className={styles.today}>{t('screens:start.today', { date: dateText(station.today) })}</p>
      </section>
      <DayCounts counts={station.counts} dueSoonDays={station.dueSoonDays} backup={station.backup} />
      <TourOffer />
      <BackupNotice station={station} />
      <PinNotices notices={station.pinNotices} />
      <TrainingNotices notices={station.trainingNotices} />
      <div className={styles.columns}>
        {station.counts.devices === 0 ? <EmptyRegister /> : <OpenInspections open={station.open} />}
        <DemoBadges />
      </div>
      <OpenCases />
      <NoticesLine />
      <p className={styles.caution}>{t('screens:start.caution')}</p>
    </div>
  );
};
