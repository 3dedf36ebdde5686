/** A long work of the station, asked after until it has ended. */
import { setTimeout as wait } from 'node:timers/promises';

const pollMs = 50;

export const untilEnded = async <Status extends { readonly state: string }>(
  ask: () => Promise<Status>,
): Promise<Exclude<Status, { readonly state: 'working' }>> => {
  for (;;) {
    const status = await ask();
    if (hasEnded(status)) return status;
    await wait(pollMs);
  }
};

const hasEnded = <Status extends { readonly state: string }>(
  status: Status,
): status is Exclude<Status, { readonly state: 'working' }> => status.state !== 'working';
