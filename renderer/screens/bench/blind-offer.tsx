/** A device that was drawn for a blind second inspection: it is inspected without the result of the first, or the result is shown. */
import type { DeviceSummary } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './blind-offer.module.css';

export interface BlindOfferProps {
  readonly device: DeviceSummary;
  /** Leaves the offer, where that is not the whole screen. */
  onClose?(): void;
}

export const BlindOffer = ({ device, onClose }: BlindOfferProps) => {
  const { t, lengthText, dateText } = useText();
  const beginning = useStationCommand('reinspection.begin');
  const seeing = useStationCommand('reinspection.see');
  const { benchId, reinspection } = device;
  const begun = reinspection?.begun;
  const begin = async (): Promise<void> => {
    if (begun !== undefined) return navigate({ screen: 'bench', inspection: begun });
    const answer = await beginning.run({ benchId, isUnaware: true });
    if (answer.ok) navigate({ screen: 'bench', inspection: answer.output.inspection.inspection });
  };
  const see = async (): Promise<void> => {
    const answer = await seeing.run({ benchId });
    if (!answer.ok) return;
    onClose?.();
    navigate({ screen: 'device', benchId });
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    if (meaning.command === 'confirm') void begin();
    else if (meaning.command === '2' && begun === undefined) void see();
    else return false;
    return true;
  });
  return (
    <div className={styles.offer}>
      <p className={styles.device}>
        {device.manufacturer} {device.model}, {device.serial}, {lengthText(device.ratedLengthM)}
      </p>
      <ul className={styles.rules}>
        <li>{t('schedule:blind.offer.text')}</li>
        <li>{t('schedule:blind.offer.cover')}</li>
        <li>{t('schedule:blind.offer.outcome')}</li>
      </ul>
      {reinspection === undefined ? null : (
        <p>{t('schedule:blind.offer.until', { date: dateText(reinspection.until) })}</p>
      )}
      <AlertLine sentence={beginning.error?.sentence ?? seeing.error?.sentence} />
      <div className={styles.actions}>
        <Button
          look="primary"
          size="large"
          icon="forward"
          isRunning={beginning.isRunning}
          autoFocus={onClose !== undefined}
          onPress={() => void begin()}
        >
          {begun === undefined
            ? t('schedule:blind.offer.begin')
            : t('schedule:blind.offer.resume', { inspection: begun })}
        </Button>
        {begun === undefined ? (
          <Button number={2} isRunning={seeing.isRunning} onPress={() => void see()}>
            {t('schedule:blind.offer.see')}
          </Button>
        ) : null}
        {onClose === undefined ? null : <Button onPress={onClose}>{t('walk:picker.cancel')}</Button>}
      </div>
    </div>
  );
};
