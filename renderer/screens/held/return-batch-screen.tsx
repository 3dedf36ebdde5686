/** One return batch: what is in it, its papers, its shipment, what the manufacturer said, and what came back. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { ReturnBatchView } from '../../../src/station/return-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { type TextKey, useText } from '../../i18n/text.ts';
import { hashOf, navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import { ReportDialog } from '../records/report-dialog.tsx';
import { FollowUpDialog } from './follow-up-dialog.tsx';
import styles from './held.module.css';
import { ReceiveDialog } from './receive-dialog.tsx';
import { ShipDialog } from './ship-dialog.tsx';

export const ReturnBatchScreen = ({ number }: { readonly number: number }) => {
  const { t } = useText();
  const { data, error } = useStationQuery('return-batch.show', { batch: number });
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  return <Batch batch={data.batch} />;
};

const toReturns = (): void => navigate({ screen: 'returns' });

type Act = 'ship' | 'follow up' | 'papers' | BenchId;

/** A scan puts a held device in while it is packed, and receives one of its devices once it is on its way. */
const Batch = ({ batch }: { readonly batch: ReturnBatchView }) => {
  const { t, dateText } = useText();
  const [act, setAct] = useState<Act>();
  const add = useStationCommand('return-batch.add');
  const takeOut = useStationCommand('return-batch.take-out');
  const { number, manufacturer, phase, devices, shipped, followUps, askOn } = batch;
  const isPacking = phase === 'open';
  /** What the row of a device offers, after the buttons at the top. */
  const rowAct = (benchId: BenchId, isBack: boolean): (() => void) | undefined => {
    if (isPacking) return () => void takeOut.run({ batch: number, benchId });
    return phase === 'shipped' && !isBack ? () => setAct(benchId) : undefined;
  };
  const main: Act | undefined = isPacking ? 'ship' : phase === 'shipped' ? 'follow up' : undefined;
  const top: readonly Act[] = devices.length === 0 ? [] : [...(main === undefined ? [] : [main]), 'papers'];
  const inRows = devices.flatMap(({ benchId, back }) => {
    const act = rowAct(benchId, back !== undefined);
    return act === undefined ? [] : [{ benchId, act }];
  });
  const numberOfRow = (benchId: BenchId): number | undefined => {
    const place = top.length + inRows.findIndex((row) => row.benchId === benchId) + 1;
    return place > 9 ? undefined : place;
  };
  const [first] = top;
  const isFree = act === undefined;
  useNumberedActs(isFree ? [...top.map((each) => () => setAct(each)), ...inRows.map((row) => row.act)] : [], {
    confirm: isFree && first !== undefined && first === main ? () => setAct(first) : undefined,
    back: isFree ? toReturns : undefined,
  });
  useScanHandler(({ meaning }) => {
    if (!isFree || meaning.meaning !== 'device') return false;
    const { benchId } = meaning.device;
    if (isPacking) void add.run({ batch: number, benchIds: [benchId] });
    else if (phase === 'shipped') setAct(benchId);
    else return false;
    return true;
  });
  const close = (): void => setAct(undefined);
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('held:returns.batch', { number, manufacturer })}</h1>
        <p className={styles.reason}>{t(`held:returns.phase.${phase}`)}</p>
      </div>
      <AlertLine sentence={(add.error ?? takeOut.error)?.sentence} />
      <div className={styles.buttons}>
        {main === undefined ? null : (
          <Button
            look="primary"
            size="large"
            number={1}
            onPress={() => setAct(main)}
            isDisabled={devices.length === 0}
            {...(isPacking ? { icon: 'away' } : {})}
          >
            {t(isPacking ? 'held:returns.ship' : 'held:returns.followUp')}
          </Button>
        )}
        <Button
          number={main === undefined ? 1 : 2}
          onPress={() => setAct('papers')}
          isDisabled={devices.length === 0}
        >
          {t('held:returns.papers')}
        </Button>
      </div>
      {shipped === undefined ? null : (
        <p>
          {t('held:returns.shippedLine', { date: dateText(shipped.on), carrier: shipped.carrier })}
          {askOn === undefined ? '' : `. ${t('held:returns.ask', { date: dateText(askOn) })}.`}
        </p>
      )}
      {followUps.length === 0 ? null : (
        <ul className={styles.list}>
          {followUps.map(({ on, by, note }) => (
            <li key={`${on} ${note}`}>
              {dateText(on)}, {by}: {note}
            </li>
          ))}
        </ul>
      )}
      <table className={styles.table} aria-label={t('held:fall.devices')}>
        <tbody>
          {devices.map(({ benchId, back }) => {
            const device = batch.inBatch.find((each) => each.benchId === benchId);
            return (
              <tr key={benchId}>
                <th scope="row">
                  <a className={styles.away} href={hashOf({ screen: 'held', benchId })}>
                    {formatBenchId(benchId)}
                  </a>
                  <span className={styles.model}>
                    {device?.model}, {device?.serial}
                  </span>
                </th>
                <td>
                  {back === undefined
                    ? null
                    : `${t('held:returns.backLine', {
                        outcome: t(`held:returns.outcomeOf.${back.outcome}`),
                        date: dateText(back.on),
                      })} ${back.certificate?.number ?? ''}`}
                  <RowButton
                    benchId={benchId}
                    act={rowAct(benchId, back !== undefined)}
                    number={numberOfRow(benchId)}
                    words={isPacking ? 'held:returns.takeOut' : 'held:returns.receive'}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <a className={styles.away} href={hashOf({ screen: 'returns' })}>
        {t('held:returns.all')}
      </a>
      <BatchDialog act={act} batch={batch} onClose={close} />
    </div>
  );
};

interface RowButtonProps {
  readonly benchId: BenchId;
  readonly act: (() => void) | undefined;
  readonly number: number | undefined;
  readonly words: TextKey;
}

const RowButton = ({ benchId, act, number, words }: RowButtonProps) => {
  const { t } = useText();
  if (act === undefined) return null;
  return (
    <Button onPress={act} {...(number === undefined ? {} : { number })}>
      {t(words, { benchId: formatBenchId(benchId) })}
    </Button>
  );
};

interface BatchDialogProps {
  readonly act: Act | undefined;
  readonly batch: ReturnBatchView;
  onClose(): void;
}

const BatchDialog = ({ act, batch, onClose }: BatchDialogProps) => {
  const { t } = useText();
  const { number, manufacturer, devices, shipped } = batch;
  switch (act) {
    case undefined:
      return null;
    case 'ship':
      return <ShipDialog number={number} onClose={onClose} />;
    case 'follow up':
      return <FollowUpDialog number={number} onClose={onClose} />;
    case 'papers':
      return (
        <ReportDialog
          title={t('held:returns.papers')}
          of={{
            kind: 'return',
            benchIds: devices.map(({ benchId }) => benchId),
            ask: 'repair',
            batch: number,
            ...(shipped === undefined
              ? {}
              : {
                  declaration: { condition: shipped.condition, contamination: shipped.contamination },
                }),
          }}
          isList
          firstNumber={1}
          onClose={onClose}
        />
      );
    default:
      return <ReceiveDialog number={number} benchId={act} manufacturer={manufacturer} onClose={onClose} />;
  }
};
