/** The devices that wait for their blind second inspection, the first drawn first. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import styles from './schedule.module.css';

type Waiting = OutputOf<'reinspection.list'>['waiting'];

export const WaitingReinspections = ({ waiting }: { readonly waiting: Waiting }) => {
  const { t, dateText } = useText();
  const stateOf = ({ begun, isForYou }: Waiting[number]): string => {
    if (begun !== undefined) return t('schedule:blind.underWay', { inspection: begun });
    return t(isForYou ? 'schedule:blind.forYou' : 'schedule:blind.forOther');
  };
  if (waiting.length === 0)
    return (
      <section className={styles.due}>
        <h2>{t('schedule:blind.waiting')}</h2>
        <p>{t('schedule:blind.noneWaiting')}</p>
      </section>
    );
  return (
    <table className={styles.table}>
      <caption className={styles.caption}>{t('schedule:blind.waiting')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('schedule:device')}</th>
          <th scope="col">{t('schedule:where')}</th>
          <th scope="col">{t('schedule:blind.drawn')}</th>
          <th scope="col">{t('schedule:blind.until')}</th>
          <th scope="col">{t('schedule:blind.who')}</th>
        </tr>
      </thead>
      <tbody>
        {waiting.map((each) => (
          <tr key={each.reinspection} className={styles.row}>
            <th scope="row">
              <a className={styles.link} href={hashOf({ screen: 'device', benchId: each.benchId })}>
                {formatBenchId(each.benchId)}
              </a>
              <span className={styles.model}>
                {each.manufacturer} {each.model}, {each.serial}
              </span>
            </th>
            <td>
              {each.place === undefined
                ? t('schedule:blind.placeUnknown')
                : t('schedule:place', { place: each.place })}
            </td>
            <td>{t('schedule:blind.by', { name: each.drawnBy, date: dateText(each.drawnOn) })}</td>
            <td>{dateText(each.until)}</td>
            <td>{stateOf(each)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};
