/** The records: signed inspections over the fleet, newest first, and the reports that are made of the register. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { Button } from '../../components/button.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useReadyStation } from '../../station/status.ts';
import { FleetReports } from './fleet-reports.tsx';
import { InspectionTable } from './inspection-table.tsx';
import { type Period, periodDays, periodsUntil } from './period.ts';
import styles from './records.module.css';

type Verdict = 'all' | 'pass' | 'remove from service';

const pageSize = 50;

export const RecordsScreen = ({ benchId }: { readonly benchId?: BenchId | undefined }) => {
  const { t } = useText();
  const station = useReadyStation();
  const people = useStationQuery('person.list', {});
  const [period, setPeriod] = useState<Period>('all');
  const [personId, setPersonId] = useState('');
  const [verdict, setVerdict] = useState<Verdict>('all');
  const [pages, setPages] = useState(1);
  const today = station?.today ?? '';
  const { data, error } = useStationQuery(
    'inspection.list',
    {
      ...(station === undefined ? {} : periodDays(period, station.today)),
      ...(personId === '' ? {} : { personId }),
      ...(verdict === 'all' ? {} : { verdict }),
      ...(benchId === undefined ? {} : { benchId }),
      limit: Math.min(500, pages * pageSize),
    },
    { keepPrevious: true },
  );

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'device') return false;
    navigate({ screen: 'records', benchId: meaning.device.benchId });
    return true;
  });

  if (error !== undefined) return <StationError error={error} />;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('records:title')}</h1>
        <FleetReports />
      </div>
      <div className={styles.filters}>
        <SelectInput<Period>
          label={t('records:filter.when')}
          value={period}
          options={periodsUntil(today).map((value) => ({
            value,
            label: isYear(value) ? value : t(`records:period.${value}`),
          }))}
          onChange={setPeriod}
        />
        <SelectInput
          label={t('records:filter.who')}
          value={personId}
          options={[
            { value: '', label: t('records:filter.anybody') },
            ...(people.data?.people ?? []).map((person) => ({ value: person.personId, label: person.name })),
          ]}
          onChange={setPersonId}
        />
        <SelectInput<Verdict>
          label={t('records:filter.verdict')}
          value={verdict}
          options={(['all', 'pass', 'remove from service'] as const).map((value) => ({
            value,
            label: value === 'all' ? t('records:filter.anyVerdict') : t(`screens:verdict.${value}`),
          }))}
          onChange={setVerdict}
        />
        {benchId === undefined ? (
          <p className={styles.soft}>{t('records:filter.scan')}</p>
        ) : (
          <Button icon="cross" onPress={() => navigate({ screen: 'records' })}>
            {t('records:filter.drop', { benchId: formatBenchId(benchId) })}
          </Button>
        )}
      </div>
      <p className={styles.soft} role="status">
        {data === undefined
          ? t('screens:app.loading')
          : t(data.more ? 'records:newest' : 'records:shown', { count: data.inspections.length })}
      </p>
      {data === undefined || data.inspections.length === 0 ? null : (
        <InspectionTable inspections={data.inspections} />
      )}
      {data?.more === true && pages * pageSize < 500 ? (
        <div className={styles.buttons}>
          <Button onPress={() => setPages(pages + 1)}>{t('records:showMore')}</Button>
        </div>
      ) : null}
      {data?.more === true && pages * pageSize >= 500 ? <p>{t('records:tooMany')}</p> : null}
    </div>
  );
};

const isYear = (period: Period): period is `${number}` => /^\d+$/.test(period);
