/** One fleet list on its way into the register: matched, asked about, checked, imported. */
import { useEffect, useRef, useState } from 'react';
import type { ColumnChoice } from '../../../src/domain/fleet-import/column-meaning.ts';
import { base64Of } from '../../camera/base64.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useLostFocus } from '../../navigation/use-lost-focus.ts';
import { useWork } from '../../station/use-work.ts';
import { ChooseListButton } from './choose-list-button.tsx';
import { ColumnChoices } from './column-choices.tsx';
import { DevicePreview } from './device-preview.tsx';
import styles from './exchange.module.css';
import { FaultList } from './fault-list.tsx';
import { type ImportPreview, type ImportStatus, previewCalls, runCalls } from './import-calls.ts';
import { ImportDone } from './import-done.tsx';
import { Questions } from './questions.tsx';

export interface ImportFlowProps {
  readonly file: File;
  onFile(file: File): void;
  onLeave(): void;
}

/** What a person said of the list so far. */
interface Said {
  readonly columns?: readonly ColumnChoice[];
  readonly sheet?: string;
  readonly withoutUnknownPeople?: boolean;
}

export const ImportFlow = ({ file, onFile, onLeave }: ImportFlowProps) => {
  const { t } = useText();
  const preview = useWork(previewCalls);
  const run = useWork(runCalls);
  const [content, setContent] = useState<string>();
  const [said, setSaid] = useState<Said>({});
  const [shown, setShown] = useState<ImportPreview>();
  const place = useRef<HTMLElement>(null);
  useLostFocus(place);

  useEffect(() => {
    let isWanted = true;
    void base64Of(file).then((bytes) => {
      if (isWanted) setContent(bytes);
    });
    return () => {
      isWanted = false;
    };
  }, [file]);

  const { begin } = preview;
  useEffect(() => {
    if (content === undefined) return;
    const { columns, ...rest } = said;
    begin({
      fileName: file.name,
      contentBase64: content,
      ...rest,
      ...(columns === undefined ? {} : { columns: [...columns] }),
    });
  }, [content, said, file, begin]);

  const { status } = preview;
  useEffect(() => {
    if (status?.state === 'previewed') setShown(status.preview);
  }, [status]);

  const change = (column: number, chosen: Partial<ColumnChoice>): void => {
    if (shown === undefined) return;
    setSaid({
      ...said,
      columns: (said.columns ?? choicesOf(shown)).map((choice) => changed(choice, column, chosen)),
    });
  };
  const start = (): void => {
    if (shown === undefined || content === undefined) return;
    const { columns, ...rest } = said;
    run.begin({
      fileName: file.name,
      contentBase64: content,
      ...rest,
      columns: [...(columns ?? choicesOf(shown))],
    });
  };

  if (!run.isWorking && run.status?.state === 'imported')
    return <ImportDone imported={run.status} onLeave={onLeave} />;
  const refused = [run, preview].map((work) =>
    work.isWorking
      ? undefined
      : (work.error?.sentence ?? (work.status?.state === 'refused' ? work.status.sentence : undefined)),
  );
  const isReady = shown?.importable === true && !preview.isWorking;
  return (
    <section ref={place} className={styles.flow} tabIndex={-1} aria-labelledby="import-list">
      <div className={styles.head}>
        <h2 id="import-list">{t('exchange:previewTitle', { fileName: file.name })}</h2>
        <div className={styles.buttons}>
          <ChooseListButton label={t('exchange:anotherFile')} onFile={onFile} />
          <Button onPress={onLeave} isDisabled={run.isWorking}>
            {t('exchange:leave')}
          </Button>
        </div>
      </div>
      <AlertLine sentence={refused.find((sentence) => sentence !== undefined)} />
      {shown === undefined ? null : (
        <>
          <p role="status">{t('exchange:counts', shown.counts)}</p>
          {shown.sheets.length > 1 ? (
            <SelectInput
              label={t('exchange:sheet')}
              value={shown.sheet ?? ''}
              options={shown.sheets.map((sheet) => ({ value: sheet, label: sheet }))}
              onChange={(sheet) => setSaid({ sheet })}
            />
          ) : null}
          <Questions
            preview={shown}
            onColumn={change}
            onWithoutPeople={() => setSaid({ ...said, withoutUnknownPeople: true })}
          />
          <FaultList preview={shown} />
          <ColumnChoices preview={shown} onColumn={change} />
          <DevicePreview preview={shown} />
        </>
      )}
      <div className={styles.foot}>
        <Progress
          isRunning={run.isWorking}
          isChecking={preview.isWorking}
          status={run.isWorking ? run.status : status}
        />
        {run.isWorking ? <Button onPress={run.cancel}>{t('exchange:cancel')}</Button> : null}
        {shown === undefined ? null : (
          <Button look="primary" isDisabled={!isReady} isRunning={run.isWorking} onPress={start}>
            {shown.importable
              ? t('exchange:import', { count: shown.counts.devices })
              : t('exchange:importNotYet')}
          </Button>
        )}
      </div>
    </section>
  );
};

interface ProgressProps {
  readonly isRunning: boolean;
  readonly isChecking: boolean;
  readonly status: ImportStatus | undefined;
}

const Progress = ({ isRunning, isChecking, status }: ProgressProps) => {
  const { t } = useText();
  const progress = status?.state === 'working' ? status : { done: 0, of: 0 };
  const { done, of } = progress;
  const words =
    of === 0 ? t('exchange:reading') : t(`exchange:${isRunning ? 'recording' : 'checking'}`, { done, of });
  return <p role="status">{isRunning || isChecking ? words : ''}</p>;
};

/** The columns as they are shown, for a person who agrees with the rest. */
const choicesOf = ({ columns }: ImportPreview): readonly ColumnChoice[] =>
  columns.map(({ column, meaning, unit }) => ({
    column,
    meaning,
    ...(unit === undefined ? {} : { unit }),
  }));

/** Another meaning has a unit and an order of its own. */
const changed = (choice: ColumnChoice, column: number, chosen: Partial<ColumnChoice>): ColumnChoice => {
  if (choice.column !== column) return choice;
  return chosen.meaning === undefined ? { ...choice, ...chosen } : { column, meaning: chosen.meaning };
};
