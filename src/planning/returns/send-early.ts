/** Of plans that cost the same, the one that sends as early as possible: nothing is gained by waiting. */
import type { Sending } from './optimum.ts';

/**
 * Moves each whole shipment to the first month in which all of it can be sent and no other shipment of its manufacturer goes.
 * It comes back earlier then, within its life all the same, so no need is missed by it and no price changes.
 */
export const earliest = (sendings: readonly Sending[]): readonly Sending[] => {
  const makers = new Set(sendings.map(({ of }) => of.terms.name));
  return [...makers].flatMap((maker) => {
    const ofMaker = sendings.filter(({ of }) => of.terms.name === maker);
    const months = [...new Set(ofMaker.map(({ month }) => month))].sort((one, other) => one - other);
    const taken = new Set<number>();
    return months.flatMap((month) => {
      const inside = ofMaker.filter((each) => each.month === month);
      let first = Math.max(...inside.map(({ of }) => of.availableFrom));
      while (taken.has(first)) first += 1;
      const moved = Math.min(first, month);
      taken.add(moved);
      return inside.map((each) => ({ ...each, month: moved }));
    });
  });
};
