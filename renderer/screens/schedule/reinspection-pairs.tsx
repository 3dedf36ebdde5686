/** The pairs whose second inspection is signed: what each of the two inspectors came to. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { VerdictMark } from '../records/verdict-mark.tsx';
import styles from './schedule.module.css';

type Pairs = OutputOf<'reinspection.list'>['signed'];
type Side = Pairs[number]['first'];

export const ReinspectionPairs = ({ signed, pairs }: { readonly signed: Pairs; readonly pairs: number }) => {
  const { t } = useText();
  if (signed.length === 0)
    return (
      <section className={styles.due}>
        <h2>{t('schedule:blind.pairs')}</h2>
        <p>{t('schedule:blind.nonePairs')}</p>
      </section>
    );
  return (
    <table className={styles.table}>
      <caption className={styles.caption}>
        {t('schedule:blind.pairsShown', { count: pairs, shown: signed.length })}
      </caption>
      <thead>
        <tr>
          <th scope="col">{t('schedule:device')}</th>
          <th scope="col">{t('schedule:blind.first')}</th>
          <th scope="col">{t('schedule:blind.second')}</th>
          <th scope="col">{t('schedule:blind.compared')}</th>
        </tr>
      </thead>
      <tbody>
        {signed.map(({ reinspection, benchId, manufacturer, model, serial, first, second }) => (
          <tr key={reinspection}>
            <th scope="row">
              {formatBenchId(benchId)}
              <span className={styles.model}>
                {manufacturer} {model}, {serial}
              </span>
            </th>
            <td>
              <SideCell side={first} />
            </td>
            <td>
              <SideCell side={second} />
            </td>
            <td>
              <span className={styles.sign}>
                <Icon name={first.verdict === second.verdict ? 'check' : 'cross'} />
                {t(first.verdict === second.verdict ? 'schedule:blind.agree' : 'schedule:blind.differ')}
              </span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

const SideCell = ({ side: { inspection, by, on, verdict } }: { readonly side: Side }) => {
  const { t, dateText } = useText();
  return (
    <>
      <VerdictMark verdict={verdict} reasons={0} />{' '}
      <a className={styles.place} href={hashOf({ screen: 'record', inspection })}>
        {t('schedule:blind.by', { name: by, date: dateText(on) })}
      </a>
    </>
  );
};
