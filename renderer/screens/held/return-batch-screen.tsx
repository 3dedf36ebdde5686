/** One return batch: what is in it, its papers, its shipment, what the manufacturer said, and what came back. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { ReturnBatchView } from '../../../src/station/return-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
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

type Act = 'ship' | 'follow up' | 'papers' | BenchId;

/** A scan puts a held device in while it is packed, and receives one of its devices once it is on its way. */
const Batch = ({ batch }: { readonly batch: ReturnBatchView }) => {
  const { t, dateText } = useText();
  const [act, setAct] = useState<Act>();
  const add = useStationCommand('return-batch.add');
  const takeOut = useStationCommand('return-batch.take-out');
  const { number, manufacturer, phase, devices, shipped, followUps, askOn } = batch;
  const isPacking = phase === 'open';
  useScanHandler(({ meaning }) => {
    if (act !== undefined) return false;
    if (meaning.meaning === 'command' && meaning.command === 'confirm' && isPacking) setAct('ship');
    else if (meaning.meaning === 'device' && isPacking)
      void add.run({ batch: number, benchIds: [meaning.device.benchId] });
    else if (meaning.meaning === 'device' && phase === 'shipped') setAct(meaning.device.benchId);
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
        {isPacking ? (
          <Button
            look="primary"
            size="large"
            icon="away"
            onPress={() => setAct('ship')}
            isDisabled={devices.length === 0}
          >
            {t('held:returns.ship')}
          </Button>
        ) : null}
        {phase === 'shipped' ? (
          <Button look="primary" size="large" onPress={() => setAct('follow up')}>
            {t('held:returns.followUp')}
          </Button>
        ) : null}
        <Button onPress={() => setAct('papers')} isDisabled={devices.length === 0}>
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
                  {phase === 'shipped' && back === undefined ? (
                    <Button onPress={() => setAct(benchId)}>
                      {t('held:returns.receive', { benchId: formatBenchId(benchId) })}
                    </Button>
                  ) : null}
                  {isPacking ? (
                    <Button onPress={() => void takeOut.run({ batch: number, benchId })}>
                      {t('held:returns.takeOut', { benchId: formatBenchId(benchId) })}
                    </Button>
                  ) : null}
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
          onClose={onClose}
        />
      );
    default:
      return <ReceiveDialog number={number} benchId={act} manufacturer={manufacturer} onClose={onClose} />;
  }
};
