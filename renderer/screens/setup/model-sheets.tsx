/** The model sheets of the station, and a new one. */
import { useState } from 'react';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import { Button } from '../../components/button.tsx';
import { ModelSheetForm } from '../../components/model-sheet-form.tsx';
import { ModelSheetLine } from '../../components/model-sheet-line.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { ContactDialog } from './contact-dialog.tsx';
import { IntervalsDialog } from './intervals-dialog.tsx';
import { MinimumDiameterDialog } from './minimum-diameter-dialog.tsx';
import styles from './setup.module.css';

export const ModelSheets = () => {
  const { t } = useText();
  const { data, error } = useStationQuery('model-sheet.list', {});
  const [isNew, setNew] = useState(false);
  const [reached, setReached] = useState<ModelSheet>();
  const [timed, setTimed] = useState<ModelSheet>();
  const [measured, setMeasured] = useState<ModelSheet>();
  if (error !== undefined) return <StationError error={error} />;
  if (isNew) {
    return (
      <section className={styles.form} aria-labelledby="new-sheet">
        <h2 id="new-sheet">{t('screens:modelSheet.title')}</h2>
        <ModelSheetForm onSaved={() => setNew(false)} onCancel={() => setNew(false)} />
      </section>
    );
  }
  return (
    <>
      <div className={styles.actions}>
        <Button icon="plus" onPress={() => setNew(true)}>
          {t('screens:setup.addModel')}
        </Button>
      </div>
      <ul className={styles.list}>
        {(data?.modelSheets ?? []).map((sheet) => (
          <li key={sheet.modelSheetId} className={styles.item}>
            <div className={styles.words}>
              <ModelSheetLine sheet={sheet} />
              <span className={styles.soft}>{sheet.manual}</span>
            </div>
            <div className={styles.buttons}>
              <ContactButton sheet={sheet} onPress={() => setReached(sheet)} />
              <Button
                onPress={() => setMeasured(sheet)}
                label={`${t('evidence:sheet.set')}: ${sheet.manufacturer} ${sheet.model}`}
              >
                {t('evidence:sheet.set')}
              </Button>
              <Button
                onPress={() => setTimed(sheet)}
                label={`${t('program:intervals.set')}: ${sheet.manufacturer} ${sheet.model}`}
              >
                {t('program:intervals.set')}
              </Button>
            </div>
          </li>
        ))}
      </ul>
      {measured === undefined ? null : (
        <MinimumDiameterDialog sheet={measured} onClose={() => setMeasured(undefined)} />
      )}
      {timed === undefined ? null : <IntervalsDialog sheet={timed} onClose={() => setTimed(undefined)} />}
      {reached === undefined ? null : (
        <ContactDialog
          manufacturer={reached.manufacturer}
          contact={reached.manufacturerContact ?? ''}
          onClose={() => setReached(undefined)}
        />
      )}
    </>
  );
};

const ContactButton = ({ sheet, onPress }: { readonly sheet: ModelSheet; onPress(): void }) => {
  const { t } = useText();
  const words = t(sheet.manufacturerContact === undefined ? 'records:contact.add' : 'records:contact.change');
  return (
    <Button onPress={onPress} label={`${words}: ${sheet.manufacturer} ${sheet.model}`}>
      {words}
    </Button>
  );
};
