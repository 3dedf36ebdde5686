/** Whom to call: devices out in the field that come due, and people whose training runs out. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './schedule.module.css';

export const NoticeList = () => {
  const { t, dateText } = useText();
  const { data } = useStationQuery('schedule.notices', {});
  if (data === undefined) return null;
  const { devices, training } = data;
  return (
    <section className={styles.notices} aria-labelledby="schedule-notices">
      <h2 id="schedule-notices">{t('schedule:notices')}</h2>
      {devices.length + training.length === 0 ? <p>{t('schedule:noNotices')}</p> : null}
      <ul className={styles.list}>
        {devices.map(({ why, planned: { device, holder = '' } }) => (
          <li key={device.benchId} className={styles.notice}>
            <Icon name={why === 'due soon' ? 'clock' : 'late'} />
            <a className={styles.place} href={hashOf({ screen: 'device', benchId: device.benchId })}>
              {formatBenchId(device.benchId)}
            </a>
            <span>{t(`schedule:why.${why}`, { holder, date: dateText(device.dueOn ?? '') })}</span>
          </li>
        ))}
        {training.map(({ personId, name, notice, on }) => (
          <li key={personId} className={styles.notice}>
            <Icon name={notice === 'expired' ? 'late' : 'clock'} />
            <a className={styles.place} href={hashOf({ screen: 'person', personId })}>
              {name}
            </a>
            <span>
              {t(notice === 'expired' ? 'people:notices.expired' : 'people:notices.soon', {
                date: dateText(on),
              })}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
};
