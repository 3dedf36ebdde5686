/** What the window asks the station first, on its way before the rest of the page is read. */
import type { CallResult } from '../../src/station/contract.ts';
import { call } from './client.ts';
import type { StationStatus } from './status.ts';

let asked: Promise<CallResult<StationStatus>> | undefined = call('station.status', {});

/** The answer, once; whoever asks again asks anew. */
export const takeFirstStatus = (): Promise<CallResult<StationStatus>> | undefined => {
  const taken = asked;
  asked = undefined;
  return taken;
};
