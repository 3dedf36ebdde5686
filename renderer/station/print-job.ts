/** A print job as it goes, asked after until it has ended. */
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { CallError, OutputOf } from '../../src/station/contract.ts';
import { holdAttended } from './attended.ts';
import { call, isPassing } from './client.ts';

export type PrintJobStatus = OutputOf<'print.status'>;

export interface PrintJobView {
  /** `undefined` until the station has answered for this job. */
  readonly status: PrintJobStatus | undefined;
  /** Why the station cannot say how the job stands; a lost connection is tried again, anything else is the end. */
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
  const [answer, setAnswer] = useState<Answer>();
  useEffect(() => {
    if (job === undefined) return;
    let release: (() => void) | undefined = holdAttended();
    const letGo = (): void => {
      release?.();
      release = undefined;
    };
    let timer: number | undefined;
    let isWatched = true;
    const ask = async (): Promise<void> => {
      const result = await call('print.status', { job });
      if (!isWatched) return;
      const view = result.ok
        ? { status: result.output, error: undefined }
        : { status: undefined, error: result.error };
      setAnswer({ job, ...view });
      if (hasEnded(view)) {
        letGo();
        await queries.invalidateQueries();
      } else timer = window.setTimeout(() => void ask(), pollMs);
    };
    void ask();
    return () => {
      isWatched = false;
      letGo();
      window.clearTimeout(timer);
    };
  }, [job, queries]);
  return answer !== undefined && answer.job === job ? answer : unknown;
};

/** Neither a station that does not answer for a moment nor a locked window ends the job. */
export const hasEnded = ({ status, error }: PrintJobView): boolean =>
  error === undefined ? status !== undefined && status.state !== 'printing' : !isPassing(error);
