/** Insight: what the removals of the depot say, each statistic with its numbers and with how many devices it rests on. */
import { useState } from 'react';
import type { InputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { AgreementSection } from './agreement-section.tsx';
import styles from './insight.module.css';
import { ParetoChart } from './pareto-chart.tsx';
import { ProportionTable } from './proportion-table.tsx';
import { SurvivalSection } from './survival-section.tsx';
import { useGroupName } from './use-group-name.ts';

type By = NonNullable<InputOf<'insight.show'>['by']>;

export const InsightScreen = () => {
  const { t } = useText();
  const [by, setBy] = useState<By>('all');
  const nameOf = useGroupName();
  const { data, error } = useStationQuery('insight.show', { by }, { keepPrevious: true });
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const { groups, survival, fewDevices } = data;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('insight:title')}</h1>
        <Button icon="clock" onPress={() => navigate({ screen: 'records' })}>
          {t('insight:back')}
        </Button>
      </div>
      <Choice<By>
        label={t('insight:by')}
        isCompact
        value={by}
        options={(['all', 'model', 'length', 'age', 'use'] as const).map((value) => ({
          value,
          label: t(`insight:byWhat.${value}`),
        }))}
        onChange={setBy}
      />
      <section className={styles.section} aria-labelledby="proportions">
        <h2 id="proportions">{t('insight:proportion.title')}</h2>
        <p>{t('insight:proportion.text')}</p>
        <ProportionTable groups={groups} nameOf={(value) => nameOf(by, value)} />
      </section>
      <section className={styles.section} aria-labelledby="pareto">
        <h2 id="pareto">{t('insight:pareto.title')}</h2>
        <p>{t('insight:pareto.text')}</p>
        {groups.map(({ value, devices, reasons, reasonCount, isFew }, index) => (
          <div key={value} className={styles.group}>
            <h3 id={`pareto-${index}`}>{nameOf(by, value)}</h3>
            <p className={styles.rests}>{t('insight:pareto.rests', { reasons: reasonCount, devices })}</p>
            {isFew ? <p className={styles.few}>{t('insight:few', { count: devices })}</p> : null}
            {reasons.length === 0 ? (
              <p>{t('insight:pareto.none')}</p>
            ) : (
              <ParetoChart reasons={reasons} labelledBy={`pareto-${index}`} />
            )}
          </div>
        ))}
      </section>
      <SurvivalSection survival={survival} fewDevices={fewDevices} />
      <AgreementSection />
    </div>
  );
};
