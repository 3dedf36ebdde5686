/** The devices that a notice means: how many, who has those that are out, and why each is meant. */
import { useEffect, useRef } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import styles from './notices.module.css';

type Matches = OutputOf<'notice.preview'>;

export interface MatchesViewProps {
  readonly matches: Matches;
  /** It has just been asked for, and is taken to. */
  readonly takesFocus?: boolean;
}

export const MatchesView = ({ matches, takesFocus = false }: MatchesViewProps) => {
  const { t } = useText();
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!takesFocus) return;
    title.current?.focus();
    title.current?.scrollIntoView({ block: 'start' });
  }, [takesFocus]);
  const { certain, possible, out, devices, unrecognised, warnings } = matches;
  return (
    <section className={styles.matches} aria-labelledby="notice-matches">
      <h2 id="notice-matches" ref={title} tabIndex={-1}>
        {t('notices:matches.title')}
      </h2>
      {warnings.map((warning) => (
        <AlertLine key={warning} sentence={warning} />
      ))}
      <p className={styles.counts}>{t('notices:matches.counts', { certain, possible, out })}</p>
      {devices.length === 0 ? (
        <p>{t('notices:matches.none')}</p>
      ) : (
        <table className={styles.table} aria-labelledby="notice-matches">
          <thead>
            <tr>
              {(['device', 'serial', 'level', 'where', 'because'] as const).map((column) => (
                <th key={column} scope="col">
                  {t(`notices:matches.${column}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {devices.map((each) => (
              <MatchRow key={each.device.benchId} match={each} />
            ))}
          </tbody>
        </table>
      )}
      {certain + possible > devices.length ? (
        <p>{t('notices:matches.more', { shown: devices.length, total: certain + possible })}</p>
      ) : null}
      {unrecognised.map(({ identityCase, keptAt, because }) => (
        <p key={identityCase} className={styles.counts}>
          <a className={styles.link} href={hashOf({ screen: 'who', identityCase })}>
            {t('notices:matches.case', { identityCase })}
          </a>{' '}
          {t('notices:matches.caseKept', { place: keptAt, because })}
        </p>
      ))}
    </section>
  );
};

const MatchRow = ({ match }: { readonly match: Matches['devices'][number] }) => {
  const { t } = useText();
  const { device, level, because, held, user } = match;
  return (
    <tr>
      <td>
        <a className={styles.link} href={hashOf({ screen: 'device', benchId: device.benchId })}>
          {formatBenchId(device.benchId)}
        </a>{' '}
        {device.manufacturer} {device.model}
      </td>
      <td>{device.serial === '' ? t('notices:matches.unreadable') : device.serial}</td>
      <td>
        <span className={styles.sign}>
          <Icon name={level === 'certain' ? 'stop' : 'blank'} />
          {t(level === 'certain' ? 'notices:matches.certain' : 'notices:matches.possible')}
        </span>
      </td>
      <td>
        {user === undefined ? (
          (device.stored?.place ?? t(`screens:standing.${device.standing}`))
        ) : (
          <span className={styles.sign}>
            <Icon name="person" />
            {t('notices:matches.with', { user })}
          </span>
        )}
        {held ? <span className={styles.held}>{t('notices:matches.held')}</span> : null}
      </td>
      <td>{because}</td>
    </tr>
  );
};
