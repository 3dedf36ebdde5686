/** One decision of the plan of returns: what is to be done with which devices, why, and what price would change it. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf, navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import type { Decision, PlannedChoice } from './decisions.ts';
import type { ReturnPlan } from './plan-job.ts';
import { PriceLimitLine } from './price-limit-line.tsx';
import { QuoteDialog } from './quote-dialog.tsx';
import styles from './returns-plan.module.css';
import { StalePlan } from './stale-plan.tsx';
import { usePlanWords } from './use-plan-words.ts';

export interface DecisionPageProps {
  readonly plan: ReturnPlan;
  readonly decision: Decision;
  /** From 1 on. */
  readonly number: number;
  readonly of: number;
  readonly isCurrent: boolean;
}

/** *Next* and *back* go through the decisions, *confirm* packs a shipment. */
export const DecisionPage = ({ plan, decision, number, of, isCurrent }: DecisionPageProps) => {
  const { t, monthText, lengthText } = useText();
  const { title } = usePlanWords(plan.currency);
  const pack = usePack(decision);
  const to = (page: number): void =>
    navigate({ screen: 'returns-plan', ...(page < 1 || page > of ? {} : { page }) });
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    const { command } = meaning;
    if (command === 'next' || command === 'back') to(number + (command === 'next' ? 1 : -1));
    else if (command === 'cancel') to(0);
    else if (command === 'confirm' && decision.kind === 'send' && isCurrent) pack.run();
    else return false;
    return true;
  });
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{title(decision)}</h1>
        <p className={styles.soft}>{t('plan:numberOf', { number, of })}</p>
      </div>
      <StalePlan isCurrent={isCurrent} />
      {decision.kind === 'send' ? (
        <>
          <p>{decision.shipment.sentence}</p>
          <AlertLine sentence={pack.fault} />
          <div className={styles.buttons}>
            <Button
              look="primary"
              size="large"
              icon="away"
              onPress={pack.run}
              isDisabled={!isCurrent}
              isRunning={pack.isRunning}
            >
              {t('plan:pack')}
            </Button>
          </div>
        </>
      ) : null}
      {decision.kind === 'order' ? (
        <ul className={styles.list}>
          {decision.orders.map((order) => (
            <li key={order.month} className={styles.order}>
              {t('plan:orderIn', {
                count: order.count,
                length: lengthText(order.lengthM),
                month: monthText(order.from),
              })}
            </li>
          ))}
        </ul>
      ) : null}
      {decision.kind === 'undecided' ? (
        <div className={styles.buttons}>
          <Button
            look="primary"
            icon="forward"
            onPress={() => navigate({ screen: 'returns-plan', page: 'data' })}
          >
            {t('plan:enterMissing')}
          </Button>
        </div>
      ) : null}
      <Devices choices={decision.choices} label={title(decision)} isCurrent={isCurrent} />
      <div className={styles.buttons}>
        <Button onPress={() => to(number - 1)}>{number === 1 ? t('plan:overview') : t('plan:back')}</Button>
        <Button icon="forward" onPress={() => to(number + 1)}>
          {number === of ? t('plan:overview') : t('plan:next')}
        </Button>
      </div>
    </div>
  );
};

/** As many as go into a batch at a time. */
const mostAtOnce = 200;

/** Puts the devices of a shipment into a new return batch, and goes there. */
const usePack = (decision: Decision) => {
  const add = useStationCommand('return-batch.add');
  const run = async (): Promise<void> => {
    const benchIds = decision.choices.flatMap(({ device }) => (device === undefined ? [] : [device.benchId]));
    let batch: number | undefined;
    for (let from = 0; from < benchIds.length; from += mostAtOnce) {
      const some = benchIds.slice(from, from + mostAtOnce);
      const result = await add.run({ benchIds: some, ...(batch === undefined ? {} : { batch }) });
      if (!result.ok) return;
      batch = result.output.batch.number;
    }
    if (batch !== undefined) navigate({ screen: 'returns', batch });
  };
  return { run: () => void run(), isRunning: add.isRunning, fault: add.error?.sentence };
};

interface DevicesProps {
  readonly choices: readonly PlannedChoice[];
  readonly label: string;
  readonly isCurrent: boolean;
}

const Devices = ({ choices, label, isCurrent }: DevicesProps) => {
  const { t, lengthText } = useText();
  const [asked, setAsked] = useState<string>();
  const [quoted, setQuoted] = useState<BenchId>();
  if (choices.length === 0) return null;
  return (
    <>
      <table className={styles.table} aria-label={label}>
        <thead>
          <tr>
            {(['device', 'what'] as const).map((column) => (
              <th key={column} scope="col">
                {t(`plan:column.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {choices.map(({ id, kind, sentence, device }) => (
            <tr key={id}>
              <th scope="row" className={styles.name}>
                {device === undefined ? (
                  id
                ) : (
                  <>
                    <a className={styles.away} href={hashOf({ screen: 'held', benchId: device.benchId })}>
                      {formatBenchId(device.benchId)}
                    </a>
                    <span className={styles.model}>
                      {device.manufacturer} {device.model}, {lengthText(device.lengthM)}, {device.serial}
                    </span>
                    {device.place === undefined ? null : (
                      <span className={styles.model}>{t('plan:keptAt', { place: device.place })}</span>
                    )}
                  </>
                )}
              </th>
              <td>
                <p>{sentence}</p>
                <div className={styles.buttons}>
                  {kind === 'undecided' ? null : (
                    <PriceLimitLine
                      id={id}
                      name={device === undefined ? id : formatBenchId(device.benchId)}
                      isAsked={asked === id}
                      isDisabled={!isCurrent}
                      onAsk={() => setAsked(id)}
                    />
                  )}
                  {device === undefined ? null : (
                    <Button
                      look="quiet"
                      label={t('plan:quoteOf', { name: formatBenchId(device.benchId) })}
                      onPress={() => setQuoted(device.benchId)}
                    >
                      {t('plan:quote')}
                    </Button>
                  )}
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {quoted === undefined ? null : <QuoteDialog benchId={quoted} onClose={() => setQuoted(undefined)} />}
    </>
  );
};
