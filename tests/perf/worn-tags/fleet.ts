/** An invented fleet of 2,000 devices with their tags, the same on every machine. */
import { benchIdFrom } from '../../../src/domain/bench-id/bench-id.ts';
import { type BenchId, calendarDate } from '../../../src/domain/brand.ts';
import type { StatusTag } from '../../../src/domain/tag-content.ts';
import { randomOf } from './random.ts';

export const fleetSize = 2000;

/** In the order of the fleet; no two alike. */
export const fleet: readonly BenchId[] = (() => {
  const random = randomOf(2000, 'fleet');
  const ids = new Set<BenchId>();
  while (ids.size < fleetSize) ids.add(benchIdFrom(Array.from({ length: 6 }, () => random.whole(0, 31))));
  return [...ids];
})();

const registered: ReadonlySet<BenchId> = new Set(fleet);

export const isInFleet = (benchId: BenchId): boolean => registered.has(benchId);

const makers = [
  { manufacturer: 'Norvane', models: ['Halt 10', 'Halt 15'], ratedLength: ['10 m', '15 m'], prefix: 'NV' },
  {
    manufacturer: 'Quillmoor',
    models: ['Stayline 30 ft', 'Stayline 50 ft'],
    ratedLength: ['9.14 m', '15.24 m'],
    prefix: 'Q',
  },
  {
    manufacturer: 'Tessaline',
    models: ['Arrest 6', 'Arrest 20'],
    ratedLength: ['6 m', '20 m'],
    prefix: 'TS',
  },
] as const;

const inspectors = ['R. Ibarra', 'Teo Arandal', 'M. Oduya', 'Lis Farrow'] as const;

/** The status tag of a device, with a maker, serial, dates and inspector drawn for it. */
export const statusTagOf = (benchId: BenchId): StatusTag => {
  const random = randomOf(fleet.indexOf(benchId), 'status tag');
  const pick = <Item>(items: readonly Item[]): Item => items[random.whole(0, items.length - 1)] as Item;
  const maker = pick(makers);
  const variant = random.whole(0, 1);
  const month = String(random.whole(1, 12)).padStart(2, '0');
  const day = String(random.whole(1, 28)).padStart(2, '0');
  const year = random.whole(2024, 2026);
  const letters = (count: number): string =>
    Array.from({ length: count }, () => '0123456789ABCDEFGHJKMNPQRSTVWXYZ'.charAt(random.whole(0, 31))).join(
      '',
    );
  return {
    kind: 'status',
    benchId,
    seal: { mark: 'H4RP', code: letters(8) },
    tagNumber: random.whole(1, 30),
    manufacturer: maker.manufacturer,
    model: maker.models[variant] ?? '',
    serial: `${maker.prefix}${random.whole(10, 26)}C${random.whole(10000, 99999)}`,
    ratedLength: maker.ratedLength[variant] ?? '',
    station: 'Harrow Point depot',
    languages: random.chance(0.5) ? ['en', 'es'] : random.chance(0.5) ? ['en'] : ['es'],
    inspectedOn: calendarDate(`${year}-${month}-${day}`),
    dueOn: calendarDate(`${year + 1}-${month}-${day}`),
    inspectorMark: pick(inspectors),
  };
};
