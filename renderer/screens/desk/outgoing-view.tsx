/** A user at the desk: the devices that are to go out, when they come back, and the inspection before use to confirm. */
import { addDays } from '../../../src/domain/calendar.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useReadyStation } from '../../station/status.ts';
import styles from './desk.module.css';
import { type DeskUser, withoutReady } from './desk-state.ts';
import { deviceWords } from './device-words.ts';
import { PreUseList } from './pre-use-list.tsx';
import type { Desk } from './use-desk.ts';

const returns = [
  { days: 0, key: 'desk:returnToday' },
  { days: 1, key: 'desk:returnTomorrow' },
  { days: 7, key: 'desk:returnWeek' },
] as const;

export const OutgoingView = ({ desk, user }: { readonly desk: Desk; readonly user: DeskUser }) => {
  const { t, dateText } = useText();
  const today = useReadyStation()?.today;
  const { ready, expectedOn = today } = desk.state;
  const comeBack = (days: number): void =>
    desk.change((state) => (today === undefined ? state : { ...state, expectedOn: addDays(today, days) }));
  useScanHandler(({ meaning }) => {
    const chosen = meaning.meaning === 'command' ? returns[Number(meaning.command) - 1] : undefined;
    if (chosen === undefined) return false;
    comeBack(chosen.days);
    return true;
  });
  return (
    <div className={styles.columns}>
      <div className={styles.main}>
        <h1 className={styles.display}>{user.name}</h1>
        {user.out > 0 && <p className={styles.large}>{t('desk:has', { count: user.out })}</p>}
        {ready.length === 0 ? (
          <p className={styles.display}>{t('desk:scanDevices')}</p>
        ) : (
          <Button look="primary" size="large" icon="check" isRunning={desk.isBusy} onPress={desk.confirm}>
            {t('desk:confirm', { count: ready.length })}
          </Button>
        )}
        <div className={styles.row}>
          {expectedOn !== undefined && <strong>{t('desk:return', { date: dateText(expectedOn) })}</strong>}
          {returns.map(({ days, key }, index) => (
            <Button key={key} number={index + 1} onPress={() => comeBack(days)}>
              {t(key)}
            </Button>
          ))}
          <Button onPress={desk.back}>{t('desk:back')}</Button>
        </div>
        <ol className={styles.ready} aria-live="polite" aria-label={t('desk:scanDevices')}>
          {ready.map((device) => (
            <li key={device.benchId} className={styles.device}>
              <Icon name="check" />
              <span className={styles.large}>{deviceWords(device)}</span>
              <Button
                look="quiet"
                onPress={() => desk.change((state) => withoutReady(state, device.benchId))}
              >
                {t('desk:takeOff')}
              </Button>
            </li>
          ))}
        </ol>
      </div>
      <PreUseList preUse={desk.preUse} />
    </div>
  );
};
