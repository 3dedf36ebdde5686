/** Every device out of service: why, where it lies, since when, what is missing, and whose step is next. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf, navigate } from '../../navigation/route.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './held.module.css';
import { HeldListsDialog } from './held-lists-dialog.tsx';
import { useHeldScan } from './use-held-scan.ts';

type Line = OutputOf<'held.list'>['held'][number];
type Owner = Line['owner'] | 'all';

/** As many as one answer of the station holds. */
const most = 500;
const toReturns = (): void => navigate({ screen: 'returns' });
const toMarkings = (): void => navigate({ screen: 'markings' });
const columns = ['device', 'reasons', 'place', 'age', 'missing', 'next'] as const;

export const HeldScreen = () => {
  const { t } = useText();
  const [owner, setOwner] = useState<Owner>('all');
  const { data, error } = useStationQuery('held.list', { limit: most }, { keepPrevious: true });
  useHeldScan();
  const [isListing, setListing] = useState(false);
  useNumberedActs(isListing ? [] : [toReturns, toMarkings, () => setListing(true)]);
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const shown = data.held.filter((line) => owner === 'all' || line.owner === owner);
  const owners = ['attendant', 'competent person', 'manufacturer'] as const;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('held:title')}</h1>
        <p aria-live="polite">{t('held:count', { count: data.total })}</p>
        <div className={styles.buttons}>
          <Button icon="away" number={1} onPress={toReturns}>
            {t('held:returns.title')}
          </Button>
          <Button icon="tag" number={2} onPress={toMarkings}>
            {t('screens:register.markings')}
          </Button>
          <Button icon="register" number={3} onPress={() => setListing(true)}>
            {t('held:lists.open')}
          </Button>
        </div>
      </div>
      <p className={styles.soft}>{t('held:hint')}</p>
      <Choice<Owner>
        label={t('held:show')}
        isCompact
        firstNumber={4}
        value={owner}
        options={[
          { value: 'all', label: t('held:all') },
          ...owners.map((value) => ({ value, label: t(`held:owner.${value}`) })),
        ]}
        onChange={setOwner}
      />
      {data.total === 0 ? <p>{t('held:none')}</p> : <HeldTable lines={shown} />}
      {isListing ? <HeldListsDialog onClose={() => setListing(false)} /> : null}
    </div>
  );
};

const HeldTable = ({ lines }: { readonly lines: readonly Line[] }) => {
  const { t, inLanguage } = useText();
  return (
    <table className={styles.table} aria-label={t('held:title')}>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {t(`held:column.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map(({ device, reasons, place, quarantinePlace, days, missing, nextStep, owner }) => {
          const [first] = reasons;
          return (
            <tr key={device.benchId} className={styles.row}>
              <th scope="row">
                <a className={styles.link} href={hashOf({ screen: 'held', benchId: device.benchId })}>
                  {formatBenchId(device.benchId)}
                </a>
                <span className={styles.model}>
                  {device.manufacturer} {device.model}
                </span>
              </th>
              <td>
                {first === undefined
                  ? device.reinspection === undefined
                    ? ''
                    : t('schedule:blind.hidden')
                  : inLanguage(first)}
                {reasons.length < 2 ? null : (
                  <span className={styles.model}>{t('held:moreReasons', { count: reasons.length - 1 })}</span>
                )}
              </td>
              <td>
                {device.standing === 'at manufacturer'
                  ? t('screens:standing.at manufacturer')
                  : (place ?? inLanguage(quarantinePlace))}
              </td>
              <td>{t('held:days', { count: days })}</td>
              <td>{missing === 0 ? t('held:nothingMissing') : t('held:missing', { count: missing })}</td>
              <td>
                {t(`held:step.${nextStep}`)}
                <span className={styles.model}>{t(`held:owner.${owner}`)}</span>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
};
