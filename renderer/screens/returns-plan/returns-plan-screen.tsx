/** Repair or replace: the plan of returns, what it costs and saves, and its decisions, each on a screen of its own. */
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useHeldScan } from '../held/use-held-scan.ts';
import { DecisionPage } from './decision-page.tsx';
import { decisionsOf } from './decisions.ts';
import { PlanData } from './plan-data.tsx';
import { stopPlan, usePlan } from './plan-job.ts';
import { PlanOverview } from './plan-overview.tsx';
import styles from './returns-plan.module.css';

/** `page`: what it is made of, or the number of a decision, from 1 on; the overview where it is absent. */
export const ReturnsPlanScreen = ({ page }: { readonly page?: 'data' | number | undefined }) => {
  useHeldScan();
  return page === 'data' ? <PlanData /> : <Made page={page} />;
};

const Made = ({ page }: { readonly page: number | undefined }) => {
  const { plan, job, isCurrent, progress, fault } = usePlan();
  if (progress !== undefined) return <Planning progress={progress} />;
  if (plan === undefined || job === undefined) return <PlanData fault={fault} />;
  const decisions = decisionsOf(plan);
  const decision = page === undefined ? undefined : decisions[page - 1];
  return page === undefined || decision === undefined ? (
    <PlanOverview plan={plan} job={job} decisions={decisions} isCurrent={isCurrent} />
  ) : (
    <DecisionPage
      key={page}
      plan={plan}
      decision={decision}
      number={page}
      of={decisions.length}
      isCurrent={isCurrent}
    />
  );
};

const Planning = ({
  progress: { done, of },
}: {
  readonly progress: { readonly done: number; readonly of: number };
}) => {
  const { t } = useText();
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'cancel') return false;
    stopPlan();
    return true;
  });
  return (
    <div className={styles.screen}>
      <h1>{t('plan:title.plan')}</h1>
      <p role="status">{of === 0 ? t('plan:gathering') : t('plan:working', { done, of })}</p>
      <progress
        className={styles.progress}
        {...(of === 0 ? {} : { value: done, max: of })}
        aria-label={t('plan:title.plan')}
      />
      <div className={styles.buttons}>
        <Button onPress={stopPlan}>{t('plan:stop')}</Button>
      </div>
    </div>
  );
};
