/** Devices of the plan as a table: when, which, until when it may be used, and where to look for it. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import styles from './schedule.module.css';
import { useWhereText } from './use-where-text.ts';

type Planned = OutputOf<'schedule.devices'>['devices'][number];

export const PlannedTable = ({
  devices,
  caption,
}: {
  readonly devices: readonly Planned[];
  readonly caption: string;
}) => {
  const { t, dateText } = useText();
  const whereText = useWhereText();
  return (
    <table className={styles.table}>
      <caption className={styles.caption}>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{t('schedule:atBench')}</th>
          <th scope="col">{t('schedule:device')}</th>
          <th scope="col">{t('schedule:due')}</th>
          <th scope="col">{t('schedule:where')}</th>
        </tr>
      </thead>
      <tbody>
        {devices.map((planned) => {
          const { device, on, kind, dueWhat } = planned;
          return (
            <tr key={device.benchId} className={styles.row}>
              <td>{on === undefined ? t('schedule:noDay') : dateText(on)}</td>
              <th scope="row">
                <a className={styles.link} href={hashOf({ screen: 'device', benchId: device.benchId })}>
                  {formatBenchId(device.benchId)}
                </a>
                <span className={styles.model}>
                  {device.manufacturer} {device.model}, {device.serial}
                </span>
              </th>
              <td>
                <span className={styles.sign}>
                  {kind === 'due' ? null : <Icon name={kind === 'overdue' ? 'late' : 'blank'} />}
                  {device.dueOn === undefined
                    ? t('schedule:neverInspected')
                    : kind === 'overdue'
                      ? t('schedule:overdueSince', { date: dateText(device.dueOn) })
                      : dateText(device.dueOn)}
                </span>
                {dueWhat === undefined || dueWhat === 'documented inspection' ? null : (
                  <span className={styles.soft}>{t(`schedule:what.${dueWhat}`)}</span>
                )}
              </td>
              <td>{whereText(planned)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
};
