/** Lets an open station keep its record safe by itself: at once, and then every ten minutes. */
import type { Station } from '../station/station.ts';
import { faultLog } from './fault-log.ts';

const everyMs = 600_000;

/** What comes back ends it. */
export const keepDaily = (station: Station, folder: string): (() => void) => {
  const log = faultLog(folder);
  const keep = (): void => {
    station.keep().catch((error: unknown) => log(error, 'keep'));
  };
  keep();
  const timer = setInterval(keep, everyMs);
  return () => clearInterval(timer);
};
