/** What the record says of a device and of its signed inspections, each to be corrected where it is wrong. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { CorrectionDialog, type CorrectionTask } from './correction-dialog.tsx';
import { CorrectionList } from './correction-list.tsx';
import styles from './corrections.module.css';
import { EnteredValues } from './entered-values.tsx';
import { SignedAnswers } from './signed-answers.tsx';

export const CorrectionsScreen = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t } = useText();
  const shown = useStationQuery('device.show', { benchId });
  const amendable = useStationQuery('record.amendable', { benchId });
  const [task, setTask] = useState<CorrectionTask>();
  const error = shown.error ?? amendable.error;
  if (shown.data === undefined || amendable.data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const { device } = shown.data;
  const { device: entries = [], inspections = [] } = amendable.data;
  return (
    <div className={styles.screen}>
      <h1>{t('corrections:title', { device: formatBenchId(benchId) })}</h1>
      <p>{t('corrections:hint')}</p>
      <div>
        <Button onPress={() => navigate({ screen: 'device', benchId })}>{t('corrections:back')}</Button>
      </div>
      <div className={styles.columns}>
        <div className={styles.stack}>
          <EnteredValues
            entries={entries}
            isInService={device.standing === 'in service'}
            onCorrect={setTask}
          />
          <section className={styles.section} aria-labelledby="corrections">
            <h2 id="corrections">{t('corrections:made')}</h2>
            <CorrectionList amendments={device.amendments} />
          </section>
        </div>
        <SignedAnswers inspections={inspections} onCorrect={setTask} />
      </div>
      {task === undefined ? null : <CorrectionDialog task={task} onClose={() => setTask(undefined)} />}
    </div>
  );
};
