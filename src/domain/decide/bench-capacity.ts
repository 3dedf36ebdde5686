/** The rules of setting what the bench can take in hand. */
import { type BenchCapacity, inspectionsIn, weekdays } from '../bench-capacity.ts';
import { refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** At least one weekday has room for one inspection, and every closure ends after it begins. */
export const decideSetBenchCapacity = (capacity: BenchCapacity): Decision => {
  const backwards = capacity.closures.findIndex(({ from, until }) => until < from);
  if (backwards >= 0) {
    const { from = '', until = '' } = capacity.closures[backwards] ?? {};
    return refusal('bench-closure-backwards', { from, until }, `capacity.closures.${backwards}.until`);
  }
  if (!weekdays.some((weekday) => inspectionsIn(capacity.hours[weekday], capacity) > 0))
    return refusal('bench-without-room', { minutes: capacity.minutesPerInspection }, 'capacity.hours');
  return [{ type: 'bench.capacity-set', capacity }];
};
