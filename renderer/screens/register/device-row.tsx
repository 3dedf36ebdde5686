/** One device of the register; the whole row leads to it. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { DueMark } from '../../components/due-mark.tsx';
import { StandingMark } from '../../components/standing-mark.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import styles from './register.module.css';

export interface DeviceRowProps {
  readonly row: number;
  readonly top: number;
  readonly height: number;
  readonly device: DeviceSummary | undefined;
}

export const DeviceRow = ({ row, top, height, device }: DeviceRowProps) => {
  const { t, lengthText } = useText();
  return (
    <div
      role="row"
      className={styles.row}
      aria-rowindex={row + 2}
      style={{ height, transform: `translateY(${top}px)` }}
    >
      {device === undefined ? (
        <span role="cell">{t('screens:app.loading')}</span>
      ) : (
        <>
          <span role="cell">
            <a className={styles.link} href={hashOf({ screen: 'device', benchId: device.benchId })}>
              {formatBenchId(device.benchId)}
            </a>
          </span>
          <span role="cell">
            {device.manufacturer} {device.model}
          </span>
          <span role="cell">{device.serial === '' ? t('screens:register.noSerial') : device.serial}</span>
          <span role="cell">{lengthText(device.ratedLengthM)}</span>
          <span role="cell">
            <StandingMark standing={device.standing} />
          </span>
          <span role="cell">
            <DueMark dueState={device.dueState} dueOn={device.dueOn} />
          </span>
        </>
      )}
    </div>
  );
};
