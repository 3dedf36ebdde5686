/** Every time that a device was out, or that a user had one, the latest first. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { InputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './desk.module.css';

export type CustodyOf = InputOf<'custody.history'>;

export const CustodyHistory = ({ of }: { readonly of: CustodyOf }) => {
  const { t, dateText } = useText();
  const spells = useStationQuery('custody.history', of).data?.spells ?? [];
  const isOfUser = 'userId' in of;
  if (spells.length === 0) return null;
  return (
    <section className={styles.list} aria-labelledby="custody-history">
      <h2 id="custody-history">{t(isOfUser ? 'desk:historyUser' : 'desk:history')}</h2>
      <ul>
        {spells.map(({ spell, benchId, manufacturer, model, user, since, ended }) => (
          <li key={spell}>
            {isOfUser ? (
              <a href={hashOf({ screen: 'device', benchId })}>
                {formatBenchId(benchId)} {manufacturer} {model}
              </a>
            ) : (
              user
            )}
            {', '}
            {dateText(since.on)},{' '}
            {ended === undefined ? t('desk:stillOut') : t('desk:until', { date: dateText(ended.on) })}
          </li>
        ))}
      </ul>
    </section>
  );
};
