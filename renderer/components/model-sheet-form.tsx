/** A model sheet, typed once from the maker's manual. */
import { type FormEvent, useState } from 'react';
import { millimetres } from '../../src/domain/brand.ts';
import { parseDiameter, parseLength } from '../../src/domain/length.ts';
import {
  type HookType,
  type HousingColour,
  hookTypes,
  housingColours,
  type LifelineMaterial,
  type ModelSheet,
} from '../../src/domain/model-sheet.ts';
import { useText } from '../i18n/text.ts';
import { useScanHandler } from '../scan/scan.ts';
import { useStationCommand } from '../station/hooks.ts';
import { AlertLine } from './alert-line.tsx';
import { Button } from './button.tsx';
import { CheckBox } from './check-box.tsx';
import { Choice } from './choice.tsx';
import { faultsOf, hasFaults } from './form-faults.ts';
import styles from './model-sheet-form.module.css';
import { SelectInput } from './select-input.tsx';
import { TextInput } from './text-input.tsx';
import { positiveNumber } from './typed-number.ts';

const emptyDraft = {
  manufacturer: '',
  model: '',
  ratedLength: '',
  diameter: '',
  minimumDiameter: '',
  capacityFrom: '',
  capacityTo: '',
  standard: '',
  interval: '',
  reference: '',
  manual: '',
};

type Draft = typeof emptyDraft;

export interface ModelSheetFormProps {
  /** The maker's reference that a scanned code gave. */
  readonly reference?: string | undefined;
  onSaved(modelSheet: ModelSheet): void;
  onCancel(): void;
}

export const ModelSheetForm = ({ reference = '', onSaved, onCancel }: ModelSheetFormProps) => {
  const { t, lengthUnit, diameterUnit } = useText();
  const [draft, setDraft] = useState({ ...emptyDraft, reference });
  const [material, setMaterial] = useState<LifelineMaterial>('galvanised');
  const [hasIndicator, setIndicator] = useState(false);
  const [hookType, setHookType] = useState<HookType | ''>('');
  const [housingColour, setHousingColour] = useState<HousingColour | ''>('');
  const [wasTried, setTried] = useState(false);
  const recordSheet = useStationCommand('model-sheet.record');

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'unknown' || meaning.data === undefined) return false;
    const { gtin, manufacturerReference } = meaning.data.identification;
    const scanned = gtin ?? manufacturerReference;
    if (scanned !== undefined)
      setDraft((before) => (before.reference === '' ? { ...before, reference: scanned } : before));
    return false;
  });

  const ratedLengthM = parseLength(draft.ratedLength, lengthUnit);
  const diameterMm = positiveNumber(draft.diameter);
  const minimumMm =
    draft.minimumDiameter.trim() === '' ? undefined : parseDiameter(draft.minimumDiameter, diameterUnit);
  const from = positiveNumber(draft.capacityFrom);
  const to = positiveNumber(draft.capacityTo);
  const interval = draft.interval.trim() === '' ? undefined : Number(draft.interval);
  const isInterval =
    interval === undefined || (Number.isInteger(interval) && interval >= 1 && interval <= 60);

  const needed = (value: string): string | undefined =>
    value.trim() === '' ? t('screens:form.needed') : undefined;
  const aNumber = (value: number | undefined): string | undefined =>
    value === undefined || value <= 0 ? t('screens:form.notANumber') : undefined;
  const own: Partial<Record<keyof Draft, string | undefined>> = {
    manufacturer: needed(draft.manufacturer),
    model: needed(draft.model),
    ratedLength: aNumber(ratedLengthM),
    diameter: aNumber(diameterMm),
    minimumDiameter:
      draft.minimumDiameter.trim() === '' || (minimumMm !== undefined && minimumMm > 0)
        ? undefined
        : t('evidence:sheet.notADiameter'),
    capacityFrom: aNumber(from),
    capacityTo: aNumber(to),
    standard: needed(draft.standard),
    interval: isInterval ? undefined : t('screens:form.notWhole'),
  };
  const refused = faultsOf(recordSheet.error);
  const errors: typeof own = {
    ...(wasTried ? own : {}),
    ...(recordSheet.error === undefined
      ? {}
      : {
          model: refused.at('modelSheet.model'),
          minimumDiameter: refused.at('modelSheet.lifelineMinimumDiameterMm'),
          capacityTo: refused.at('modelSheet.capacityKg'),
        }),
  };

  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own) || ratedLengthM === undefined || diameterMm === undefined) return;
    if (from === undefined || to === undefined) return;
    const manual = draft.manual.trim();
    const result = await recordSheet.run({
      modelSheet: {
        manufacturer: draft.manufacturer,
        model: draft.model,
        ratedLengthM,
        lifelineMaterial: material,
        lifelineDiameterMm: millimetres(diameterMm),
        ...(minimumMm === undefined ? {} : { lifelineMinimumDiameterMm: minimumMm }),
        capacityKg: { from, to },
        standard: draft.standard,
        loadIndicatorFitted: hasIndicator,
        ...(interval === undefined ? {} : { manufacturerIntervalMonths: interval }),
        ...(draft.reference.trim() === '' ? {} : { manufacturerReference: draft.reference }),
        ...(manual === '' ? {} : { manual }),
        ...(hookType === '' ? {} : { hookType }),
        ...(housingColour === '' ? {} : { housingColour }),
      },
    });
    if (result.ok) onSaved(result.output.modelSheet);
  };

  const field = (name: keyof Draft) => ({
    value: draft[name],
    onChange: (value: string) => setDraft({ ...draft, [name]: value }),
    error: errors[name],
  });

  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)}>
      <p>{t('screens:modelSheet.hint')}</p>
      <div className={styles.fields}>
        <TextInput label={t('screens:modelSheet.manufacturer')} {...field('manufacturer')} autoFocus />
        <TextInput label={t('screens:modelSheet.model')} {...field('model')} />
        <TextInput
          label={t('screens:modelSheet.ratedLength', { unit: lengthUnit })}
          {...field('ratedLength')}
          inputMode="decimal"
        />
        <TextInput label={t('screens:modelSheet.diameter')} {...field('diameter')} inputMode="decimal" />
        <TextInput label={t('evidence:sheet.minimum')} {...field('minimumDiameter')} />
        <TextInput
          label={t('screens:modelSheet.capacityFrom')}
          {...field('capacityFrom')}
          inputMode="decimal"
        />
        <TextInput label={t('screens:modelSheet.capacityTo')} {...field('capacityTo')} inputMode="decimal" />
        <TextInput label={t('screens:modelSheet.standard')} {...field('standard')} />
        <TextInput label={t('screens:modelSheet.interval')} {...field('interval')} inputMode="numeric" />
        <TextInput label={t('screens:modelSheet.reference')} {...field('reference')} />
        <TextInput label={t('screens:modelSheet.manual')} {...field('manual')} />
        <SelectInput<HookType | ''>
          label={t('screens:modelSheet.hookType')}
          value={hookType}
          options={[
            { value: '', label: t('screens:modelSheet.notSaid') },
            ...hookTypes.map((value) => ({ value, label: t(`screens:identity.hook.${value}`) })),
          ]}
          onChange={setHookType}
        />
        <SelectInput<HousingColour | ''>
          label={t('screens:modelSheet.housingColour')}
          value={housingColour}
          options={[
            { value: '', label: t('screens:modelSheet.notSaid') },
            ...housingColours.map((value) => ({ value, label: t(`screens:identity.colour.${value}`) })),
          ]}
          onChange={setHousingColour}
        />
      </div>
      <div className={styles.pair}>
        <Choice<LifelineMaterial>
          label={t('screens:modelSheet.material')}
          value={material}
          options={(['galvanised', 'stainless'] as const).map((value) => ({
            value,
            label: t(`screens:material.${value}`),
          }))}
          onChange={setMaterial}
        />
        <CheckBox isSelected={hasIndicator} onChange={setIndicator}>
          {t('screens:modelSheet.indicator')}
        </CheckBox>
      </div>
      <AlertLine sentence={refused.rest()} />
      <div className={styles.actions}>
        <Button onPress={onCancel}>{t('screens:form.cancel')}</Button>
        <Button type="submit" look="primary" isRunning={recordSheet.isRunning}>
          {t('screens:modelSheet.save')}
        </Button>
      </div>
    </form>
  );
};
