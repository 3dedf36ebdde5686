/** The signature under a notice, typed or scanned digit by digit: with it every device that is meant is held. */
import { useEffect } from 'react';
import type { CallError, InputOf, OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { useText } from '../../i18n/text.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import { call } from '../../station/client.ts';
import { useWork, type WorkCalls } from '../../station/use-work.ts';
import { usePin } from '../bench/use-pin.ts';
import { PinInput } from '../people/pin-input.tsx';
import styles from './notices.module.css';

export interface RecordNoticeProps {
  readonly text: InputOf<'notice.record-start'>['text'];
  /** How many devices it means. */
  readonly meant: number;
  onRecorded(notice: number): void;
}

type Status = OutputOf<'notice.record-status'>;

const recordCalls: WorkCalls<InputOf<'notice.record-start'>, Status> = {
  isCommand: true,
  start: (input) => call('notice.record-start', input),
  status: (job) => call('notice.record-status', { job }),
  cancel: (job) => call('notice.record-cancel', { job }),
};

export const RecordNotice = ({ text, meant, onRecorded }: RecordNoticeProps) => {
  const { t } = useText();
  const { status, error, isWorking, begin, cancel } = useWork(recordCalls);
  const { pin, type, submit } = usePin({
    isRunning: isWorking,
    onSign: async (pin) => begin({ text, pin }),
  });
  useNumberedActs([], { cancel: isWorking ? cancel : undefined });
  const faults = faultsOf(error ?? refusalIn(status, isWorking));
  const recorded = status?.state === 'recorded' && !isWorking ? status.notice : undefined;
  useEffect(() => {
    if (recorded !== undefined) onRecorded(recorded);
  }, [recorded, onRecorded]);
  return (
    <form className={styles.signature} onSubmit={submit}>
      <p className={styles.counts}>{t('notices:recordText', { count: meant })}</p>
      <div className={styles.sign}>
        <PinInput label={t('notices:pin')} value={pin} onChange={type} error={faults.at('pin')} />
        <Button type="submit" look="primary" size="large" isRunning={isWorking}>
          {t('notices:record')}
        </Button>
        {isWorking ? <Button onPress={cancel}>{t('notices:cancelRecording')}</Button> : null}
      </div>
      <p role="status">
        {isWorking && status?.state === 'working'
          ? t('notices:recording', { percent: percentOf(status) })
          : null}
      </p>
      <AlertLine sentence={faults.rest()} />
    </form>
  );
};

const refusalIn = (status: Status | undefined, isWorking: boolean): CallError | undefined => {
  if (status?.state !== 'refused' || isWorking) return undefined;
  const { code, sentence, field } = status;
  return { code, sentence, ...(field === undefined ? {} : { field }) };
};

const percentOf = ({ done, of }: Extract<Status, { state: 'working' }>): number =>
  of === 0 ? 0 : Math.floor((100 * done) / of);
