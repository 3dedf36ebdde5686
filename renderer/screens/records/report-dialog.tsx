/**
 * Makes a report: in which form, in which words, on which paper; then shows it, or says where it is. The command symbol
 * *confirm* makes it, then closes the dialog.
 */
import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { InputOf, OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { call } from '../../station/client.ts';
import { useWork, type WorkCalls } from '../../station/use-work.ts';
import styles from './records.module.css';
import { saveReport } from './save-report.ts';

type Request = InputOf<'report.make'>;
type Status = OutputOf<'report.status'>;
type Words = Request['language'];
type Form = NonNullable<Request['format']>;
type Paper = 'a4' | 'letter';

const forms = ['pdf', 'csv', 'xlsx'] as const;
const wordings = ['en', 'es', 'both'] as const;

export interface ReportDialogProps {
  readonly title: string;
  /** Absent while the form has not said it. */
  readonly of: Request['of'] | undefined;
  /** A list can also be had as CSV and as a workbook. */
  readonly isList?: boolean;
  /** The one form in which it can be had; a PDF where it is absent and this is no list. */
  readonly onlyForm?: Form;
  /** The digit of the first of its choices; without it none has one. */
  readonly firstNumber?: number;
  /** What else is asked for. */
  readonly children?: ReactNode;
  onClose(): void;
}

export const ReportDialog = ({
  title,
  of,
  isList = false,
  onlyForm,
  firstNumber,
  children,
  onClose,
}: ReportDialogProps) => {
  const { t, language } = useText();
  const [form, setForm] = useState<Form>(onlyForm ?? 'pdf');
  const [words, setWords] = useState<Words>(language);
  const [paper, setPaper] = useState<Paper>('a4');
  const job = useRef<number>(undefined);
  const [calls] = useState(
    (): WorkCalls<Request, Status> => ({
      isCommand: false,
      start: async (request) => {
        const started = await call('report.make', request);
        job.current = started.ok ? started.output.job : undefined;
        return started;
      },
      status: (number) => call('report.status', { job: number }),
      cancel: (number) => call('report.cancel', { job: number }),
    }),
  );
  const { status, error, isWorking, begin, cancel } = useWork(calls);
  const made = !isWorking && status?.state === 'made' ? status : undefined;
  const isToShow = made?.opened === false;
  useEffect(() => {
    if (isToShow && job.current !== undefined) void saveReport(job.current);
  }, [isToShow]);
  const make = (): void => {
    if (of !== undefined) begin({ of, format: form, language: words, paper, open: true });
  };
  const numbered = (before: number): { readonly firstNumber?: number } =>
    firstNumber === undefined ? {} : { firstNumber: firstNumber + before };
  const close = (): void => {
    cancel();
    onClose();
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    if (made !== undefined) close();
    else if (!isWorking) make();
    return true;
  });
  return (
    <Dialog title={title} onClose={close}>
      <div className={styles.form}>
        {children}
        {isList ? (
          <Choice<Form>
            label={t('records:report.form')}
            value={form}
            {...numbered(0)}
            options={forms.map((value) => ({
              value,
              label: t(`records:report.forms.${value}`),
            }))}
            onChange={setForm}
          />
        ) : null}
        <div className={styles.choices}>
          <Choice<Words>
            label={t('records:report.words')}
            value={words}
            {...numbered(isList ? forms.length : 0)}
            options={wordings.map((value) => ({
              value,
              label: t(`records:report.languages.${value}`),
            }))}
            onChange={setWords}
          />
          {form === 'pdf' ? (
            <Choice<Paper>
              label={t('records:report.paper')}
              value={paper}
              {...numbered((isList ? forms.length : 0) + wordings.length)}
              options={[
                { value: 'a4', label: 'A4' },
                { value: 'letter', label: 'US Letter' },
              ]}
              onChange={setPaper}
            />
          ) : null}
        </div>
        <div role="status">
          {isWorking ? (
            <p>
              {status?.state === 'working' && status.of > 0
                ? t('records:report.pages', { done: status.done, of: status.of })
                : t(form === 'ics' ? 'records:report.calendarWorking' : 'records:report.working')}
            </p>
          ) : null}
          {made === undefined ? null : (
            <>
              <p className={styles.made}>
                <Icon name="check" />
                {t(form === 'ics' ? 'records:report.calendarMade' : 'records:report.made')}
              </p>
              <p className={styles.path}>{made.path}</p>
            </>
          )}
        </div>
        <AlertLine
          sentence={
            error?.sentence ?? (!isWorking && status?.state === 'refused' ? status.sentence : undefined)
          }
        />
        <div className={styles.buttons}>
          <Button onPress={close}>
            {t(made === undefined ? 'screens:form.cancel' : 'records:report.close')}
          </Button>
          <Button look="primary" isRunning={isWorking} isDisabled={of === undefined} onPress={make}>
            {t(form === 'ics' ? 'records:report.makeCalendar' : 'records:report.make')}
          </Button>
        </div>
      </div>
    </Dialog>
  );
};
