/** Keeps how far the tour is, for this window and its station. */
import { type ReactNode, useCallback, useMemo, useState } from 'react';
import { recall, remember } from '../station/remembered.ts';
import { readTour, stopNames, type Tour, TourContext, type TourState, tourText } from './tour.ts';

export const TourProvider = ({ children }: { readonly children: ReactNode }) => {
  const [state, setState] = useState<TourState>(() => readTour(recall('tour')));
  const change = useCallback((next: TourState): void => {
    remember('tour', tourText(next));
    setState(next);
  }, []);
  const tour = useMemo<Tour>(() => {
    const stop = state.kind === 'at' ? state.stop : 0;
    return {
      state,
      resume: () => change({ kind: 'at', stop, isLeft: false }),
      go: (next) =>
        change(
          next < stopNames.length ? { kind: 'at', stop: Math.max(0, next), isLeft: false } : { kind: 'over' },
        ),
      leave: () => change({ kind: 'at', stop, isLeft: true }),
      end: () => change({ kind: 'over' }),
    };
  }, [state, change]);
  return <TourContext value={tour}>{children}</TourContext>;
};
