/** The plan of returns at a glance: what it costs and saves, and its decisions to be opened one after another. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf, navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { ReportDialog } from '../records/report-dialog.tsx';
import type { Decision } from './decisions.ts';
import type { ReturnPlan } from './plan-job.ts';
import styles from './returns-plan.module.css';
import { StalePlan } from './stale-plan.tsx';
import { usePlanWords } from './use-plan-words.ts';

export interface PlanOverviewProps {
  readonly plan: ReturnPlan;
  /** The number with which the station knows it. */
  readonly job: number;
  readonly decisions: readonly Decision[];
  readonly isCurrent: boolean;
}

const open = (number: number): void => navigate({ screen: 'returns-plan', page: number });

/** A digit of the command sheet opens the decision of that number, *confirm* or *next* the first. */
export const PlanOverview = ({ plan, job, decisions, isCurrent }: PlanOverviewProps) => {
  const { t } = useText();
  const { title } = usePlanWords(plan.currency);
  const [isReporting, setReporting] = useState(false);
  useScanHandler(({ meaning }) => {
    if (isReporting || meaning.meaning !== 'command') return false;
    const { command } = meaning;
    const number = command === 'confirm' || command === 'next' ? 1 : Number(command);
    if (decisions[number - 1] === undefined) return false;
    open(number);
    return true;
  });
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('plan:title.plan')}</h1>
        <div className={styles.buttons}>
          <Button icon="register" onPress={() => navigate({ screen: 'returns-plan', page: 'data' })}>
            {t('plan:data')}
          </Button>
          <Button onPress={() => setReporting(true)}>{t('plan:report')}</Button>
          <Button icon="away" onPress={() => navigate({ screen: 'returns' })}>
            {t('held:returns.title')}
          </Button>
        </div>
      </div>
      <StalePlan isCurrent={isCurrent} />
      <Cost plan={plan} />
      <section className={styles.panel} aria-labelledby="decisions">
        <h2 id="decisions">{t('plan:decisions')}</h2>
        {decisions.length === 0 ? (
          <p>{t('plan:nothing')}</p>
        ) : (
          <ol className={styles.decisions}>
            {decisions.map((decision, index) => (
              <li key={title(decision)}>
                <Button
                  isWide
                  look={index === 0 ? 'primary' : 'plain'}
                  {...(index < 9 ? { number: index + 1 } : {})}
                  onPress={() => open(index + 1)}
                >
                  {title(decision)}
                </Button>
              </li>
            ))}
          </ol>
        )}
      </section>
      {plan.shortfalls.length === 0 ? null : (
        <section className={styles.panel} aria-labelledby="shortfalls">
          <h2 id="shortfalls" className={styles.sign}>
            <Icon name="warning" />
            {t('plan:shortfalls')}
          </h2>
          <Sentences sentences={plan.shortfalls} />
        </section>
      )}
      {plan.missing.length === 0 ? null : (
        <section className={styles.panel} aria-labelledby="missing">
          <h2 id="missing">{t('plan:missing')}</h2>
          <Sentences sentences={plan.missing.map(({ sentence }) => sentence)} />
          <div className={styles.buttons}>
            <Button icon="forward" onPress={() => navigate({ screen: 'returns-plan', page: 'data' })}>
              {t('plan:enterMissing')}
            </Button>
          </div>
        </section>
      )}
      {plan.apart.length === 0 ? null : <Apart apart={plan.apart} />}
      {isReporting ? (
        <ReportDialog
          title={t('plan:report')}
          of={{ kind: 'return-plan', job }}
          isList
          onClose={() => setReporting(false)}
        />
      ) : null}
    </div>
  );
};

interface CostRow {
  readonly key: 'total' | 'oneByOne' | 'replaceAll';
  readonly amount: number;
  readonly note: string;
}

/** What is to be paid, against the two ways without a plan. */
const Cost = ({ plan }: { readonly plan: ReturnPlan }) => {
  const { t } = useText();
  const { money } = usePlanWords(plan.currency);
  const { total, oneByOne, replaceAll } = plan;
  if (total === undefined) return <Sentences sentences={plan.summary} />;
  const saved = (amount: number): string => t('plan:saves', { amount: money(amount - total) });
  const rows: readonly CostRow[] = [
    { key: 'total', amount: total, note: '' },
    ...(oneByOne === undefined
      ? []
      : [{ key: 'oneByOne' as const, amount: oneByOne, note: saved(oneByOne) }]),
    ...(replaceAll === undefined
      ? []
      : [{ key: 'replaceAll' as const, amount: replaceAll, note: saved(replaceAll) }]),
  ];
  return (
    <section className={styles.panel} aria-labelledby="cost">
      <h2 id="cost">{t('plan:cost')}</h2>
      <table className={styles.table} aria-labelledby="cost">
        <tbody>
          {rows.map(({ key, amount, note }) => (
            <tr key={key}>
              <th scope="row">{t(`plan:${key}`)}</th>
              <td className={styles.amount}>{money(amount)}</td>
              <td>{note}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

export const Sentences = ({ sentences }: { readonly sentences: readonly string[] }) => (
  <ul className={styles.list}>
    {sentences.map((sentence) => (
      <li key={sentence}>{sentence}</li>
    ))}
  </ul>
);

/** Held devices that are no part of the plan. */
export const Apart = ({ apart }: { readonly apart: ReturnPlan['apart'] }) => {
  const { t } = useText();
  return (
    <section className={styles.panel} aria-labelledby="apart">
      <h2 id="apart">{t('plan:apart')}</h2>
      <ul className={styles.list}>
        {apart.map(({ benchId, sentence }) => (
          <li key={benchId} className={styles.line}>
            <span>{sentence}</span>
            <a className={styles.away} href={hashOf({ screen: 'held', benchId })}>
              {t('plan:open', { benchId: formatBenchId(benchId) })}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
};
