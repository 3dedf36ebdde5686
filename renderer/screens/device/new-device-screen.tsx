/** Registers a device in three steps: its model, its marking element by element, its codes and user. */
import { useRef, useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useLostFocus } from '../../navigation/use-lost-focus.ts';
import { type ScanMeaning, useScanHandler } from '../../scan/scan.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import { CodeNotice } from './code-notice.tsx';
import { CodesStep } from './codes-step.tsx';
import {
  expectedMarking,
  filledByCodes,
  legibleText,
  type MarkingLine,
  markingEntries,
} from './marking-draft.ts';
import { MarkingStep } from './marking-step.tsx';
import { ModelStep } from './model-step.tsx';
import styles from './new-device.module.css';
import { identificationsOf, keptCodes, plainCodes, type ScannedCode, withCode } from './scanned-codes.ts';

export interface NewDeviceScreenProps {
  /** The unknown code that led here; it is kept as the maker's code. */
  readonly code?: string | undefined;
  /** The bench ID of a fresh label that led here. */
  readonly benchId?: BenchId | undefined;
}

const steps = ['stepModel', 'stepMarking', 'stepCodes'] as const;

/** The code that led here is asked about first, so that the form opens with what it says. */
export const NewDeviceScreen = ({ code, benchId }: NewDeviceScreenProps) => {
  const { t } = useText();
  const scanned = useStationQuery('scan.interpret', { text: code ?? '' }, { enabled: code !== undefined });
  if (code === undefined) return <NewDeviceForm first={undefined} benchId={benchId} />;
  if (scanned.isPending) return <p>{t('screens:app.loading')}</p>;
  const meaning = scanned.data;
  const data = meaning !== undefined && 'data' in meaning ? meaning.data : undefined;
  return <NewDeviceForm first={{ code, data }} benchId={benchId} />;
};

interface NewDeviceFormProps {
  readonly first: ScannedCode | undefined;
  readonly benchId: BenchId | undefined;
}

const NewDeviceForm = ({ first, benchId }: NewDeviceFormProps) => {
  const { t, language, lengthUnit } = useText();
  const sheets = useStationQuery('model-sheet.list', {});
  const register = useStationCommand('device.register');
  const [step, setStep] = useState(0);
  const currentStep = useRef<HTMLLIElement>(null);
  useLostFocus(currentStep);
  const [sheet, setSheet] = useState<ModelSheet>();
  const [lines, setLines] = useState<readonly MarkingLine[]>([]);
  const [codes, setCodes] = useState<readonly ScannedCode[]>(first === undefined ? [] : [first]);
  const identifications = identificationsOf(codes);
  /** What was scanned last, and at which step: the next step shows it where it belongs. */
  const [noticed, setNoticed] = useState({ code: first?.code, step: 0 });
  const [label, setLabel] = useState(benchId);
  const [regularUserId, setRegularUserId] = useState('');

  useScanHandler(({ meaning, text }) => {
    if (meaning.meaning === 'bench ID not registered') setLabel(meaning.benchId);
    else if (isNewCode(meaning) && text.length >= 3) {
      setNoticed({ code: meaning.text, step });
      const after = withCode(codes, { code: meaning.text, data: meaning.data });
      setCodes(after);
      setLines((before) => filledByCodes(before, identificationsOf(after)));
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
    if (chosen.modelSheetId !== sheet?.modelSheetId) {
      setLines(filledByCodes(expectedMarking(chosen, words), identifications));
    }
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
      otherCodes: keptCodes(codes).map((each) => ({ code: each.code, kind: 'maker' as const })),
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
      <CodeNotice
        scanned={noticed.step === step ? codes.find(({ code }) => code === noticed.code) : undefined}
      />
      {step === 0 ? (
        <ModelStep sheets={sheets.data?.modelSheets} identifications={identifications} onChoose={choose} />
      ) : null}
      {step === 1 && sheet !== undefined ? (
        <MarkingStep
          sheet={sheet}
          lines={lines}
          codes={plainCodes(codes)}
          identifications={identifications}
          onChange={setLines}
          onBack={() => setStep(0)}
          onNext={() => setStep(2)}
        />
      ) : null}
      {step === 2 ? (
        <CodesStep
          codes={keptCodes(codes)}
          onTakeOff={(code) => setCodes((before) => before.filter((each) => each.code !== code))}
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

/** A code that no device has; one that a serial number only suggests is taken for a code of the device in hand, too. */
const isNewCode = (
  meaning: ScanMeaning,
): meaning is Extract<ScanMeaning, { meaning: 'unknown' | 'suggestion' }> =>
  meaning.meaning === 'unknown' || (meaning.meaning === 'suggestion' && meaning.data !== undefined);
