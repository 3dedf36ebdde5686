/** A command that needs the plan of the bench: where that takes a while, it says how far it is, and an interruption ends it. */
import type { Job, StationCall } from './job.ts';

const toldEveryMs = 1000;

export const whilePlanning = async <Result>(
  { words, terminal }: Job,
  call: StationCall,
  work: () => Promise<Result>,
): Promise<Result> => {
  const tell = async (): Promise<void> => {
    const planning = await call('schedule.planning', {});
    if (planning.state === 'working')
      terminal.err(`${words('planning', { done: planning.done, of: planning.of })}\n`);
  };
  // What it cannot say is not what was asked for; that comes from the work itself.
  const timer = setInterval(() => void tell().catch(() => undefined), toldEveryMs);
  try {
    return await work();
  } finally {
    clearInterval(timer);
  }
};
