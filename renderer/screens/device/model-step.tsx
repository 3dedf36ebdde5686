/** Step one of registering: the model sheet of the device, or a new one. */
import { useState } from 'react';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import { Button } from '../../components/button.tsx';
import { ModelSheetForm } from '../../components/model-sheet-form.tsx';
import { ModelSheetLine } from '../../components/model-sheet-line.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './new-device.module.css';

export interface ModelStepProps {
  readonly sheets: readonly ModelSheet[] | undefined;
  onChoose(sheet: ModelSheet): void;
}

/** As many as there are digits to choose with. */
const inSight = 9;

export const ModelStep = ({ sheets, onChoose }: ModelStepProps) => {
  const { t } = useText();
  const [isNew, setNew] = useState(false);
  const [search, setSearch] = useState('');
  if (sheets === undefined) return <p>{t('screens:app.loading')}</p>;
  if (isNew) return <ModelSheetForm onSaved={onChoose} onCancel={() => setNew(false)} />;
  const words = search.toLowerCase().split(/\s+/);
  const matching = sheets.filter((sheet) =>
    words.every((word) =>
      `${sheet.manufacturer} ${sheet.model} ${sheet.standard}`.toLowerCase().includes(word),
    ),
  );
  return (
    <div className={styles.step}>
      <div className={styles.bar}>
        <div className={styles.grow}>
          <TextInput
            label={t('screens:newDevice.modelSearch')}
            isLabelHidden
            type="search"
            placeholder={t('screens:newDevice.modelSearch')}
            value={search}
            onChange={setSearch}
          />
        </div>
        <Button icon="plus" onPress={() => setNew(true)}>
          {t('screens:newDevice.newSheet')}
        </Button>
      </div>
      {sheets.length === 0 ? <p>{t('screens:newDevice.noSheets')}</p> : null}
      <NumberedChoices
        choices={matching.slice(0, inSight).map((sheet) => ({
          key: sheet.modelSheetId,
          label: <ModelSheetLine sheet={sheet} />,
          onChoose: () => onChoose(sheet),
        }))}
      />
      {matching.length > inSight ? (
        <p>{t('screens:newDevice.more', { count: matching.length - inSight })}</p>
      ) : null}
    </div>
  );
};
