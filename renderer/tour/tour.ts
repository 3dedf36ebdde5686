/** The tour through the demo: its stops in order, how each is known to be done, and how far this window is. */
import { createContext, useContext } from 'react';
import type { Route } from '../navigation/route.ts';
import type { ReadyStation } from '../station/status.ts';

export const stopNames = [
  'sign-in',
  'desk',
  'bench',
  'verdict',
  'tag',
  'held',
  'schedule',
  'records',
] as const;
export type StopName = (typeof stopNames)[number];

/** What the window shows now. */
export interface TourSight {
  readonly station: ReadyStation;
  readonly route: Route;
  /** The inspection that the tour watches, once one was opened. */
  readonly inspection: number | undefined;
}

/** True where what the stop asks for was really done. */
export const isDone = (stop: StopName, { station, route, inspection }: TourSight): boolean => {
  switch (stop) {
    case 'sign-in':
      return station.person?.roles.includes('inspector') === true;
    case 'bench':
      return route.screen === 'bench' && route.inspection !== undefined;
    case 'verdict':
      return inspection !== undefined && !station.open.some((open) => open.inspection === inspection);
    case 'desk':
    case 'tag':
    case 'held':
    case 'schedule':
    case 'records':
      return route.screen === stop;
  }
};

export type TourState =
  | { readonly kind: 'not offered yet' }
  /** From 0 on; `isLeft` while somebody does other things. */
  | { readonly kind: 'at'; readonly stop: number; readonly isLeft: boolean }
  | { readonly kind: 'over' };

/** As it is remembered: `3`, `left 3`, `over`. */
export const tourText = (state: TourState): string => {
  switch (state.kind) {
    case 'not offered yet':
      return '';
    case 'at':
      return state.isLeft ? `left ${state.stop}` : String(state.stop);
    case 'over':
      return 'over';
  }
};

export const readTour = (text: string | undefined): TourState => {
  if (text === 'over') return { kind: 'over' };
  const [, left, digits] = /^(left )?(\d)$/.exec(text ?? '') ?? [];
  const stop = Number(digits);
  return digits !== undefined && stop < stopNames.length
    ? { kind: 'at', stop, isLeft: left !== undefined }
    : { kind: 'not offered yet' };
};

export interface Tour {
  readonly state: TourState;
  /** Begins, or goes on where it was left. */
  resume(): void;
  go(stop: number): void;
  leave(): void;
  end(): void;
}

export const TourContext = createContext<Tour>({
  state: { kind: 'not offered yet' },
  resume: () => undefined,
  go: () => undefined,
  leave: () => undefined,
  end: () => undefined,
});

export const useTour = (): Tour => useContext(TourContext);
