/** The one next action, largest; for a device out of service, why it stays so. */
import { useState } from 'react';
import type { DeviceCard } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { BeginDialog } from '../bench/begin-dialog.tsx';
import { CheckInFirst } from './check-in-first.tsx';
import styles from './next-action.module.css';
import { RemovalReasons } from './removal-reasons.tsx';

export interface NextActionProps {
  readonly device: DeviceCard;
  /** Asks for the ground on which the device is removed at once. */
  onRemove(): void;
}

export const NextAction = ({ device, onRemove }: NextActionProps) => {
  const { t } = useText();
  const [isBeginning, setBeginning] = useState(false);

  const actNow = (): void => {
    if (device.openInspection === undefined) setBeginning(true);
    else navigate({ screen: 'bench', inspection: device.openInspection });
  };
  const toHeld = (): void => navigate({ screen: 'held', benchId: device.benchId });
  const canInspect = device.nextAction === 'start inspection' || device.nextAction === 'resume inspection';

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    if (canInspect) actNow();
    else if (device.standing !== 'scrapped') toHeld();
    else return false;
    return true;
  });

  const isAway = device.custody !== undefined || device.openCheckIn !== undefined;
  if (device.nextAction === 'check in first') {
    return (
      <section className={styles.actions}>
        <CheckInFirst device={device} />
        <div className={styles.row}>
          <Button look="remove" icon="stop" onPress={onRemove}>
            {t('screens:device.remove')}
          </Button>
        </div>
      </section>
    );
  }
  if (!canInspect) {
    return (
      <section className={styles.out} aria-labelledby="keep-out">
        <h2 id="keep-out" className={styles.outTitle}>
          <Icon name={device.standing === 'scrapped' ? 'cross' : 'stop'} />
          {t(device.standing === 'scrapped' ? 'screens:device.scrapped' : 'screens:device.keepOut')}
        </h2>
        <RemovalReasons device={device} />
        {isAway && <CheckInFirst device={device} />}
        {device.standing === 'scrapped' ? null : (
          <div className={styles.row}>
            <Button look="primary" size="large" icon="forward" onPress={toHeld}>
              {t('screens:device.openHeld')}
            </Button>
          </div>
        )}
      </section>
    );
  }
  return (
    <section className={styles.actions}>
      <div className={styles.row}>
        <Button look="primary" size="large" icon="forward" onPress={actNow}>
          {device.openInspection === undefined
            ? t('screens:device.start')
            : t('screens:device.resume', { inspection: device.openInspection })}
        </Button>
        <Button look="remove" icon="stop" onPress={onRemove}>
          {t('screens:device.remove')}
        </Button>
      </div>
      <p className={styles.hint}>{t('screens:device.nextHint')}</p>
      {isBeginning && <BeginDialog device={device} onClose={() => setBeginning(false)} />}
    </section>
  );
};
