/** A fall case: what is known, who sealed the bag, and how it ended. */

import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { HeldView } from '../../../src/station/held-view.ts';
import { useText } from '../../i18n/text.ts';
import styles from './held.module.css';

export interface FallCasePanelProps {
  readonly file: NonNullable<HeldView['fallCase']>;
}

export const FallCasePanel = ({ file }: FallCasePanelProps) => {
  const { t, dateText } = useText();
  const { number, facts, devices, custody, photos, closed, openedBy, openedOn } = file;
  const known = (value: string | undefined): string =>
    value === undefined || value === '' ? t('held:fall.notKnown') : value;
  const pairs: readonly (readonly [string, string])[] = [
    [
      t('held:fall.happenedOn'),
      facts.happenedOn === undefined ? known(undefined) : dateText(facts.happenedOn),
    ],
    [t('held:fall.userId'), known(file.userName)],
    [t('held:fall.job'), known(facts.job)],
    [
      t('held:fall.indicator'),
      facts.indicator === undefined ? known(undefined) : t(`held:fall.indicatorOf.${facts.indicator}`),
    ],
    [t('held:fall.informed'), known(facts.informed)],
    [t('held:fall.bagNumber'), known(facts.bagNumber)],
    [t('held:fall.account'), known(facts.account)],
    [t('held:fall.devices'), devices.map(formatBenchId).join(', ')],
    [t('held:fall.photos'), String(photos.length)],
  ];
  return (
    <section className={styles.panel} aria-labelledby="fall-case">
      <h2 id="fall-case">{t('held:fall.title', { number })}</h2>
      <p>
        {closed === undefined
          ? t('held:fall.state.open', { date: dateText(openedOn), name: openedBy })
          : t('held:fall.closedBy', { date: dateText(closed.on), name: closed.by })}
      </p>
      <dl className={styles.pairs}>
        {pairs.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
        {closed === undefined ? null : (
          <div>
            <dt>{t('held:fall.findings')}</dt>
            <dd>{closed.findings}</dd>
          </div>
        )}
      </dl>
      {custody.map(({ bagNumber, by, at }) => (
        <p key={at} className={styles.soft}>
          {t('held:fall.custody', { bagNumber, name: by })}, {dateText(at)}
        </p>
      ))}
    </section>
  );
};
