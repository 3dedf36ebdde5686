/** Returns to manufacturers: the batches, how long each manufacturer takes, and what can be repaired. */
import { useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { NumberMark } from '../../components/number-mark.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf, navigate } from '../../navigation/route.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './held.module.css';
import { RepairTermsDialog } from './repair-terms-dialog.tsx';
import { useHeldScan } from './use-held-scan.ts';

type Model = OutputOf<'repair-terms.list'>['models'][number];

const toHeld = (): void => navigate({ screen: 'held' });
const toPlan = (): void => navigate({ screen: 'returns-plan' });
const toBatch = (batch: number): void => navigate({ screen: 'returns', batch });

export const ReturnsScreen = () => {
  const { t, dateText } = useText();
  const { data, error } = useStationQuery('return-batch.list', {});
  const [asked, setAsked] = useState<Model>();
  useHeldScan();
  const batches = data?.batches ?? [];
  useNumberedActs(
    asked === undefined
      ? batches.slice(0, 9).map(
          ({ number }) =>
            () =>
              toBatch(number),
        )
      : [],
    asked === undefined ? { back: toHeld, confirm: toPlan } : {},
  );
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('held:returns.title')}</h1>
        <div className={styles.buttons}>
          <a className={styles.away} href={hashOf({ screen: 'held' })}>
            {t('held:back')}
          </a>
          <Button look="primary" icon="forward" onPress={toPlan}>
            {t('plan:title.plan')}
          </Button>
        </div>
      </div>
      {data.batches.length === 0 ? (
        <p>{t('held:returns.none')}</p>
      ) : (
        <table className={styles.table} aria-label={t('held:returns.batches')}>
          <tbody>
            {data.batches.map(({ number, manufacturer, phase, devices, askOn }, index) => (
              <tr key={number} className={styles.row}>
                <th scope="row">
                  <span className={styles.numbered}>
                    <NumberMark number={index < 9 ? index + 1 : undefined} />
                  </span>
                  <a className={styles.link} href={hashOf({ screen: 'returns', batch: number })}>
                    {t('held:returns.batch', { number, manufacturer })}
                  </a>
                </th>
                <td>{t('held:returns.devices', { count: devices.length })}</td>
                <td>{t(`held:returns.phase.${phase}`)}</td>
                <td>{askOn === undefined ? '' : t('held:returns.ask', { date: dateText(askOn) })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {data.turnarounds.length === 0 ? null : (
        <section className={styles.panel} aria-labelledby="turnarounds">
          <h2 id="turnarounds">{t('held:returns.makers')}</h2>
          <ul className={styles.list}>
            {data.turnarounds.map((each) => (
              <li key={each.manufacturer}>{t('held:returns.turnaround', { ...each })}</li>
            ))}
          </ul>
        </section>
      )}
      <Models asked={asked} onAsk={setAsked} />
    </div>
  );
};

interface ModelsProps {
  /** The model whose answer is being recorded. */
  readonly asked: Model | undefined;
  onAsk(model: Model | undefined): void;
}

const Models = ({ asked, onAsk }: ModelsProps) => {
  const { t, lengthText } = useText();
  const { data } = useStationQuery('repair-terms.list', {});
  if (data === undefined || data.models.length === 0) return null;
  const said = ({ terms }: Model): string => {
    if (terms === undefined) return t('held:returns.notAsked');
    const words = t(`held:returns.repairable.${terms.repairable}`);
    return terms.price === undefined || terms.leadTimeDays === undefined
      ? words
      : `${words}: ${t('held:returns.terms', { price: terms.price, days: terms.leadTimeDays })}`;
  };
  const nameOf = ({ manufacturer, model }: Model): string => `${manufacturer} ${model}`;
  return (
    <section className={styles.screen} aria-labelledby="repairable">
      <h2 id="repairable">{t('held:returns.models')}</h2>
      <table className={styles.table} aria-labelledby="repairable">
        <thead>
          <tr>
            {(['model', 'length', 'held', 'answer'] as const).map((column) => (
              <th key={column} scope="col">
                {t(`held:returns.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {data.models.map((each) => (
            <tr key={each.modelSheetId}>
              <th scope="row">{nameOf(each)}</th>
              <td>{lengthText(each.ratedLengthM)}</td>
              <td>{each.held}</td>
              <td>
                <div className={styles.answer}>
                  <span>{said(each)}</span>
                  <Button onPress={() => onAsk(each)}>
                    {t('held:returns.record', { model: each.model })}
                  </Button>
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {asked === undefined ? null : (
        <RepairTermsDialog
          modelSheetId={asked.modelSheetId}
          model={nameOf(asked)}
          known={asked.terms}
          onClose={() => onAsk(undefined)}
        />
      )}
    </section>
  );
};
