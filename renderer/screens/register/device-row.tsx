/** One device of the register; the whole row leads to it, or chooses it. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { CheckBox } from '../../components/check-box.tsx';
import { DueMark } from '../../components/due-mark.tsx';
import { StandingMark } from '../../components/standing-mark.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import type { ChoiceOfDevices } from './choice-of-devices.ts';
import styles from './register.module.css';

export interface DeviceRowProps {
  readonly row: number;
  readonly top: number;
  readonly height: number;
  readonly device: DeviceSummary | undefined;
  readonly choice: ChoiceOfDevices;
}

export const DeviceRow = ({ row, top, height, device, choice: { chosen, toggle } }: DeviceRowProps) => {
  const { t, lengthText } = useText();
  return (
    <tr className={styles.row} aria-rowindex={row + 2} style={{ height, transform: `translateY(${top}px)` }}>
      {device === undefined ? (
        <td>{t('screens:app.loading')}</td>
      ) : (
        <>
          {chosen === undefined ? (
            <td>
              <a className={styles.link} href={hashOf({ screen: 'device', benchId: device.benchId })}>
                {formatBenchId(device.benchId)}
              </a>
            </td>
          ) : (
            <td className={styles.pick}>
              <CheckBox isSelected={chosen.includes(device.benchId)} onChange={() => toggle(device.benchId)}>
                {formatBenchId(device.benchId)}
              </CheckBox>
            </td>
          )}
          <td>
            {device.manufacturer} {device.model}
          </td>
          <td>{device.serial === '' ? t('screens:register.noSerial') : device.serial}</td>
          <td>{lengthText(device.ratedLengthM)}</td>
          <td>
            <StandingMark standing={device.standing} />
          </td>
          <td>
            <DueMark dueState={device.dueState} dueOn={device.dueOn} />
          </td>
        </>
      )}
    </tr>
  );
};
