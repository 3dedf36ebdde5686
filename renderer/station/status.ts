/** What the whole window knows of its station: whether it is set up, who is signed in, the numbers of the day. */
import { createContext, useContext, useRef } from 'react';
import type { LengthUnit } from '../../src/domain/length.ts';
import type { OutputOf } from '../../src/station/contract.ts';

export type StationStatus = OutputOf<'station.status'>;
export type ReadyStation = Extract<StationStatus, { state: 'ready' }>;

export const StationStatusContext = createContext<StationStatus>({ state: 'empty' });

export const useStationStatus = (): StationStatus => useContext(StationStatusContext);

/** The station that is set up; `undefined` while it is empty. */
export const useReadyStation = (): ReadyStation | undefined => {
  const status = useStationStatus();
  return status.state === 'ready' ? status : undefined;
};

/** The unit of the station; metres while it is empty. */
export const useLengthUnit = (): LengthUnit => useReadyStation()?.lengthUnit ?? 'm';

/** The person signed in at this window. */
export const useSignedIn = (): ReadyStation['person'] => useReadyStation()?.person;

/** What the screens go by: while the window is locked, the station as it was before, so that everything on them stays. */
export const useUnlockedStatus = (now: StationStatus | undefined): StationStatus | undefined => {
  const before = useRef<StationStatus>(undefined);
  const isLocked = now?.state === 'ready' && now.lockedFor !== undefined;
  if (!isLocked) before.current = now;
  return isLocked ? (before.current ?? now) : now;
};
