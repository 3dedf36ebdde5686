/** A long work of the station, asked after until it has ended. */
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { CallError, CallResult } from '../../src/station/contract.ts';
import { isPassing } from './client.ts';

interface WorkStatus {
  readonly state: string;
}

/** How the work is begun, asked after and canceled. */
export interface WorkCalls<Input, Status extends WorkStatus> {
  /** False where the work changes nothing that the screens show. */
  readonly isCommand: boolean;
  start(input: Input): Promise<CallResult<{ readonly job: number }>>;
  status(job: number): Promise<CallResult<Status>>;
  cancel(job: number): Promise<unknown>;
}

export interface Work<Input, Status extends WorkStatus> {
  /** The latest that is known of it; absent before it is begun. */
  readonly status: Status | undefined;
  readonly error: CallError | undefined;
  readonly isWorking: boolean;
  /** Begins anew; what was begun before is canceled. */
  begin(input: Input): void;
  cancel(): void;
}

const pollMs = 200;

/** `calls` stays the same object. When a command has ended, everything that the screens show is asked for anew. */
export const useWork = <Input, Status extends WorkStatus>(
  calls: WorkCalls<Input, Status>,
): Work<Input, Status> => {
  const queries = useQueryClient();
  const [status, setStatus] = useState<Status>();
  const [error, setError] = useState<CallError>();
  const [isWorking, setWorking] = useState(false);
  const turn = useRef(0);
  const job = useRef<number>(undefined);
  useEffect(
    () => () => {
      turn.current += 1;
    },
    [],
  );
  const begin = useCallback(
    (input: Input): void => {
      turn.current += 1;
      const mine = turn.current;
      const isMine = (): boolean => turn.current === mine;
      const follow = async (): Promise<void> => {
        const started = await calls.start(input);
        if (!isMine()) return;
        if (!started.ok) {
          setError(started.error);
          setWorking(false);
          return;
        }
        job.current = started.output.job;
        for (;;) {
          const answer = await calls.status(started.output.job);
          if (!isMine()) return;
          if (answer.ok) setStatus(answer.output);
          else if (!isPassing(answer.error)) setError(answer.error);
          if (answer.ok ? answer.output.state !== 'working' : !isPassing(answer.error)) break;
          await new Promise((resolve) => window.setTimeout(resolve, pollMs));
          if (!isMine()) return;
        }
        job.current = undefined;
        setWorking(false);
        if (calls.isCommand) await queries.invalidateQueries();
      };
      if (job.current !== undefined) void calls.cancel(job.current);
      job.current = undefined;
      setError(undefined);
      setWorking(true);
      void follow();
    },
    [calls, queries],
  );
  const cancel = useCallback((): void => {
    if (job.current !== undefined) void calls.cancel(job.current);
  }, [calls]);
  return { status, error, isWorking, begin, cancel };
};
