/** Which device is on the bench: bench ID, maker, model, serial number and rated length, to hold against what hangs there. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import styles from './device-line.module.css';

export const DeviceLine = ({ device }: { readonly device: DeviceSummary }) => {
  const { lengthText } = useText();
  return (
    <div className={styles.device}>
      <strong className={styles.benchId}>{formatBenchId(device.benchId)}</strong>
      <span>
        {device.manufacturer} {device.model}
      </span>
      <span>
        {device.serial} · {lengthText(device.ratedLengthM)}
      </span>
    </div>
  );
};
