/** The card of a device for somebody who may yet make its blind second inspection: nothing of what the first one found. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceCard } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import { BlindOffer } from '../bench/blind-offer.tsx';
import styles from './device.module.css';

export const BlindDevice = ({ device }: { readonly device: DeviceCard }) => {
  const { t } = useText();
  return (
    <div className={styles.screen}>
      <h1>{t('schedule:blind.offer.title', { device: formatBenchId(device.benchId) })}</h1>
      <BlindOffer device={device} />
    </div>
  );
};
