/** Step one of registering: the model sheet of the device, or a new one. */
import { useState } from 'react';
import { type Identification, matchReference } from '../../../src/domain/marking-data.ts';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { ModelSheetForm } from '../../components/model-sheet-form.tsx';
import { ModelSheetLine } from '../../components/model-sheet-line.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './new-device.module.css';

export interface ModelStepProps {
  readonly sheets: readonly ModelSheet[] | undefined;
  /** What the scanned codes say of the device. */
  readonly identifications: readonly Identification[];
  onChoose(sheet: ModelSheet): void;
}

/** As many as there are digits to choose with. */
const inSight = 9;

export const ModelStep = ({ sheets, identifications, onChoose }: ModelStepProps) => {
  const { t } = useText();
  const [isNew, setNew] = useState(false);
  const [search, setSearch] = useState('');
  if (sheets === undefined) return <p>{t('screens:app.loading')}</p>;
  const reference = referenceOf(identifications);
  if (isNew)
    return <ModelSheetForm reference={reference} onSaved={onChoose} onCancel={() => setNew(false)} />;
  const words = search.toLowerCase().split(/\s+/);
  const isNamed = (sheet: ModelSheet): boolean =>
    identifications.some((each) => matchReference(each, sheet.manufacturerReference) === 'same');
  const found = sheets.filter((sheet) =>
    words.every((word) =>
      `${sheet.manufacturer} ${sheet.model} ${sheet.standard}`.toLowerCase().includes(word),
    ),
  );
  const matching = [...found.filter(isNamed), ...found.filter((sheet) => !isNamed(sheet))];
  return (
    <div className={styles.step}>
      {reference === undefined ? null : (
        <p>
          {sheets.some(isNamed)
            ? t('screens:newDevice.sheetsNamed')
            : t('screens:newDevice.sheetNotNamed', { text: reference })}
        </p>
      )}
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
          label: (
            <>
              <ModelSheetLine sheet={sheet} />
              {isNamed(sheet) ? (
                <span className={styles.named}>
                  <Icon name="scan" /> {t('screens:newDevice.sheetNamed')}
                </span>
              ) : null}
            </>
          ),
          onChoose: () => onChoose(sheet),
        }))}
      />
      {matching.length > inSight ? (
        <p>{t('screens:newDevice.more', { count: matching.length - inSight })}</p>
      ) : null}
    </div>
  );
};

/** The first reference of a model that a code gave: its GTIN, or the maker's own number. */
const referenceOf = (identifications: readonly Identification[]): string | undefined =>
  identifications
    .map(({ gtin, manufacturerReference }) => gtin ?? manufacturerReference)
    .find((reference) => reference !== undefined);
