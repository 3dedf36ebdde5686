/** A print job as it goes, asked after until it has ended. */
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { CallError, OutputOf } from '../../src/station/contract.ts';
import { useLanguage } from '../i18n/language.ts';
import { call } from './client.ts';

export type PrintJobStatus = OutputOf<'print.status'>;

export interface PrintJobView {
  /** `undefined` until the station has answered for this job. */
  readonly status: PrintJobStatus | undefined;
  /** Why the station cannot say how the job stands. */
  readonly error: CallError | undefined;
}

interface Answer extends PrintJobView {
  readonly job: number;
}

/** Milliseconds from one answer to the next question. */
const pollMs = 500;

const unknown: PrintJobView = { status: undefined, error: undefined };

/** Asks nothing while `job` is absent. When the job has ended, everything that the screens show is asked for anew. */
export const usePrintJob = (job: number | undefined): PrintJobView => {
  const queries = useQueryClient();
  const language = useLanguage();
  const [answer, setAnswer] = useState<Answer>();
  useEffect(() => {
    if (job === undefined) return;
    let timer: number | undefined;
    let isWatched = true;
    const ask = async (): Promise<void> => {
      const result = await call('print.status', { job });
      if (!isWatched) return;
      const status = result.ok ? result.output : undefined;
      setAnswer({ job, status, error: result.ok ? undefined : result.error });
      if (mayChange(result.ok ? status?.state : result.error.code)) {
        timer = window.setTimeout(() => void ask(), pollMs);
      } else await queries.invalidateQueries();
    };
    void ask();
    return () => {
      isWatched = false;
      window.clearTimeout(timer);
    };
  }, [job, language, queries]);
  return answer !== undefined && answer.job === job ? answer : unknown;
};

/** A station that does not answer for a moment does not end the job. */
const mayChange = (state: string | undefined): boolean =>
  state === 'printing' || state === 'station-unreachable';
