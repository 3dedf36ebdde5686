/** The plan of returns that this window made last: it stays while the window goes to other screens and comes back. */
import { useSyncExternalStore } from 'react';
import type { CallError, OutputOf } from '../../../src/station/contract.ts';
import { call } from '../../station/client.ts';
import { useStationQuery } from '../../station/hooks.ts';

export type ReturnPlan = Extract<OutputOf<'return-plan.status'>, { state: 'planned' }>['plan'];

interface Progress {
  readonly done: number;
  readonly of: number;
}

type Latest =
  | { readonly state: 'none'; readonly error?: CallError }
  | { readonly state: 'working'; readonly job?: number; readonly progress: Progress }
  | { readonly state: 'ended'; readonly job: number };

const notCountedYet: Progress = { done: 0, of: 0 };
const pollMs = 250;

let latest: Latest = { state: 'none' };
const listeners = new Set<() => void>();

const become = (next: Latest): void => {
  latest = next;
  for (const tell of listeners) tell();
};

/** Makes the plan anew from the record as it is now, unless one is under way. */
export const makePlan = async (): Promise<void> => {
  if (latest.state === 'working') return;
  become({ state: 'working', progress: notCountedYet });
  const started = await call('return-plan.start', {});
  if (!started.ok) {
    become({ state: 'none', error: started.error });
    return;
  }
  const { job } = started.output;
  for (;;) {
    const answer = await call('return-plan.status', { job });
    if (!answer.ok) {
      become({ state: 'none', error: answer.error });
      return;
    }
    if (answer.output.state !== 'working') break;
    become({ state: 'working', job, progress: answer.output });
    await new Promise((resolve) => window.setTimeout(resolve, pollMs));
  }
  become({ state: 'ended', job });
};

export const stopPlan = (): void => {
  if (latest.state === 'working' && latest.job !== undefined)
    void call('return-plan.cancel', { job: latest.job });
};

export interface PlanMade {
  readonly plan?: ReturnPlan | undefined;
  /** The number with which the station knows it. */
  readonly job?: number | undefined;
  /** False where something was recorded since. */
  readonly isCurrent: boolean;
  /** How far it is; absent where none is under way. */
  readonly progress?: Progress | undefined;
  /** Why there is none. */
  readonly fault?: string | undefined;
}

const subscribe = (tell: () => void): (() => void) => {
  listeners.add(tell);
  return () => listeners.delete(tell);
};

export const usePlan = (): PlanMade => {
  const known = useSyncExternalStore(subscribe, () => latest);
  const job = known.state === 'ended' ? known.job : undefined;
  const shown = useStationQuery('return-plan.status', { job: job ?? 1 }, { enabled: job !== undefined });
  if (known.state === 'working') return { isCurrent: true, progress: known.progress };
  if (known.state === 'none') return { isCurrent: true, fault: known.error?.sentence };
  switch (shown.data?.state) {
    case 'planned':
      return { isCurrent: shown.data.isCurrent, plan: shown.data.plan, job };
    case 'refused':
      return { isCurrent: true, fault: shown.data.sentence };
    default:
      return shown.error === undefined
        ? { isCurrent: true, progress: notCountedYet }
        : { isCurrent: true, fault: shown.error.sentence };
  }
};
