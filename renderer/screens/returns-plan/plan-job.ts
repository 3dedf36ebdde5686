/** The plan of returns that this window made last: it stays while the window goes to other screens and comes back. */
import { useSyncExternalStore } from 'react';
import type { CallError, OutputOf } from '../../../src/station/contract.ts';
import { call } from '../../station/client.ts';
import { useStationQuery } from '../../station/hooks.ts';

export type ReturnPlan = Extract<OutputOf<'return-plan.status'>, { state: 'planned' }>['plan'];

interface LatestJob {
  readonly job?: number;
  readonly isStarting: boolean;
  readonly error?: CallError | undefined;
}

let latest: LatestJob = { isStarting: false };
const listeners = new Set<() => void>();

const become = (next: LatestJob): void => {
  latest = next;
  for (const tell of listeners) tell();
};

/** Makes the plan anew from the record as it is now. */
export const makePlan = async (): Promise<void> => {
  if (latest.isStarting) return;
  become({ isStarting: true });
  const answer = await call('return-plan.start', {});
  become(
    answer.ok ? { job: answer.output.job, isStarting: false } : { isStarting: false, error: answer.error },
  );
};

export const stopPlan = (): void => {
  if (latest.job !== undefined) void call('return-plan.cancel', { job: latest.job });
};

export interface PlanMade {
  readonly plan?: ReturnPlan | undefined;
  /** The number with which the station knows it. */
  readonly job?: number | undefined;
  /** False where something was recorded since. */
  readonly isCurrent: boolean;
  /** How far it is; absent where none is under way. */
  readonly progress?: { readonly done: number; readonly of: number } | undefined;
  /** Why there is none. */
  readonly fault?: string | undefined;
}

const everyMs = 250;

export const usePlan = (): PlanMade => {
  const { job, isStarting, error } = useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => latest,
  );
  const shown = useStationQuery(
    'return-plan.status',
    { job: job ?? 1 },
    { enabled: job !== undefined, everyMs },
  );
  const status = job === undefined ? undefined : shown.data;
  if (isStarting || (job !== undefined && shown.isPending)) return { isCurrent: true, progress: { done: 0, of: 0 } };
  switch (status?.state) {
    case 'working':
      return { isCurrent: true, progress: status };
    case 'planned':
      return { isCurrent: status.isCurrent, plan: status.plan, job };
    case 'refused':
      return { isCurrent: true, fault: status.sentence };
    case undefined:
      return { isCurrent: true, fault: (error ?? shown.error)?.sentence };
  }
};
