/** Registers a device in three steps: its model, its marking element by element, its codes and user. */
import { useRef, useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useLostFocus } from '../../navigation/use-lost-focus.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import { CodesStep } from './codes-step.tsx';
import { expectedMarking, legibleText, type MarkingLine, markingEntries } from './marking-draft.ts';
import { MarkingStep } from './marking-step.tsx';
import { ModelStep } from './model-step.tsx';
import styles from './new-device.module.css';

export interface NewDeviceScreenProps {
  /** The unknown code that led here; it is kept as the maker's code. */
  readonly code?: string | undefined;
  /** The bench ID of a fresh label that led here. */
  readonly benchId?: BenchId | undefined;
}

const steps = ['stepModel', 'stepMarking', 'stepCodes'] as const;

export const NewDeviceScreen = ({ code, benchId }: NewDeviceScreenProps) => {
  const { t, language, lengthUnit } = useText();
  const sheets = useStationQuery('model-sheet.list', {});
  const register = useStationCommand('device.register');
  const [step, setStep] = useState(0);
  const currentStep = useRef<HTMLLIElement>(null);
  useLostFocus(currentStep);
  const [sheet, setSheet] = useState<ModelSheet>();
  const [lines, setLines] = useState<readonly MarkingLine[]>([]);
  const [codes, setCodes] = useState<readonly string[]>(code === undefined ? [] : [code]);
  const [label, setLabel] = useState(benchId);
  const [regularUserId, setRegularUserId] = useState('');

  useScanHandler(({ meaning, text }) => {
    if (meaning.meaning === 'bench ID not registered') setLabel(meaning.benchId);
    else if (meaning.meaning === 'unknown' && text.length >= 3) {
      setCodes((before) => (before.includes(meaning.text) ? before : [...before, meaning.text]));
    } else return false;
    return true;
  });

  if (sheets.error !== undefined) return <StationError error={sheets.error} />;

  const choose = (chosen: ModelSheet): void => {
    const words = {
      language,
      lengthUnit,
      material: (each: ModelSheet['lifelineMaterial']) => t(`screens:material.${each}`),
    };
    if (chosen.modelSheetId !== sheet?.modelSheetId) setLines(expectedMarking(chosen, words));
    setSheet(chosen);
    setStep(1);
  };

  const submit = async (): Promise<void> => {
    if (sheet === undefined) return;
    const result = await register.run({
      ...(label === undefined ? {} : { benchId: label }),
      modelSheetId: sheet.modelSheetId,
      serial: legibleText(lines, 'serialNumber'),
      dateOfManufacture: legibleText(lines, 'dateOfManufacture'),
      marking: markingEntries(lines),
      otherCodes: codes.map((each) => ({ code: each, kind: 'maker' as const })),
      ...(regularUserId === '' ? {} : { regularUserId }),
    });
    if (result.ok) navigate({ screen: 'device', benchId: result.output.benchId });
  };

  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('screens:newDevice.title')}</h1>
        <ol className={styles.steps} aria-label={t('screens:newDevice.steps')}>
          {steps.map((each, index) => (
            <li
              key={each}
              {...(index === step ? { ref: currentStep, tabIndex: -1, 'aria-current': 'step' as const } : {})}
            >
              {t(`screens:newDevice.${each}`)}
            </li>
          ))}
        </ol>
      </div>
      {step === 0 ? <ModelStep sheets={sheets.data?.modelSheets} onChoose={choose} /> : null}
      {step === 1 && sheet !== undefined ? (
        <MarkingStep
          sheet={sheet}
          lines={lines}
          codes={codes}
          onChange={setLines}
          onBack={() => setStep(0)}
          onNext={() => setStep(2)}
        />
      ) : null}
      {step === 2 ? (
        <CodesStep
          codes={codes}
          onCodes={setCodes}
          label={label}
          onLabel={setLabel}
          regularUserId={regularUserId}
          onRegularUser={setRegularUserId}
          error={register.error}
          isRunning={register.isRunning}
          onBack={() => setStep(1)}
          onRegister={() => void submit()}
        />
      ) : null}
    </div>
  );
};
