/** The rules of counting a place: it ends with what was found, and what had no place yet has one from then on. */
import type { BenchId } from '../brand.ts';
import type { Kit } from '../custody/kit.ts';
import { countOf } from '../custody/shelf-count.ts';
import type { Device } from '../device.ts';
import { refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

export interface Count {
  readonly place: string;
  readonly scanned: readonly Device[];
  readonly unknown: readonly string[];
  /** Devices of another place whose place is this one from now on. */
  readonly keepHere: readonly BenchId[];
}

export const decideCount = (
  { place, scanned, unknown, keepHere }: Count,
  belonging: readonly Device[],
  kits: readonly Kit[],
): Decision => {
  const kit = kits.find(({ code }) => code === place);
  if (kit !== undefined) return refusal('count-place-is-kit', { place, name: kit.name }, 'place');
  const counted = countOf(place, belonging, scanned, unknown);
  const unplaced = scanned.filter(
    ({ benchId, stored }) => stored === undefined && counted.found.includes(benchId),
  );
  const moved = counted.wrongPlace.filter(({ benchId }) => keepHere.includes(benchId));
  const stay = new Set([...unplaced, ...moved].map(({ benchId }) => benchId));
  return [
    { type: 'place.counted', ...counted },
    ...[...stay].map((benchId) => ({ type: 'device.stored' as const, benchId, place })),
  ];
};

export const decideStore = ({ benchId, standing, stored }: Device, place: string): Decision => {
  if (standing === 'scrapped') return refusal('device-scrapped', { benchId });
  return stored?.place === place ? [] : [{ type: 'device.stored', benchId, place }];
};
