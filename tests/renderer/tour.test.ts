/** The tour through the demo: what it names exists there, what counts as done, and what a window remembers of it. */
import { describe, expect, test } from 'vitest';
import fleet from '../../demo-data/fleet.json' with { type: 'json' };
import people from '../../demo-data/people.json' with { type: 'json' };
import { demoValues } from '../../renderer/tour/demo-values.ts';
import { isDone, readTour, stopNames, type TourSight, tourText } from '../../renderer/tour/tour.ts';
import { parseBenchId } from '../../src/domain/bench-id/bench-id.ts';

test('the badge and the device that the tour names are in the demo', () => {
  const bench = parseBenchId(demoValues.device);
  const benchId = bench.kind === 'exact' ? bench.id : '';
  expect(JSON.stringify(fleet)).toContain(`"${benchId}"`);
  expect(JSON.stringify(people)).toContain(`"${demoValues.badge}"`);
});

describe('a stop', () => {
  const station = (more: object = {}) => ({ open: [], ...more }) as unknown as TourSight['station'];
  const sight = (more: Partial<TourSight>): TourSight => ({
    station: station(),
    route: { screen: 'start' },
    inspection: undefined,
    ...more,
  });

  test('is done when its thing was really done, and not before', () => {
    expect(isDone('sign-in', sight({}))).toBe(false);
    expect(isDone('sign-in', sight({ station: station({ person: { roles: ['user'] } }) }))).toBe(false);
    expect(isDone('sign-in', sight({ station: station({ person: { roles: ['inspector'] } }) }))).toBe(true);
    expect(isDone('bench', sight({ route: { screen: 'bench' } }))).toBe(false);
    expect(isDone('bench', sight({ route: { screen: 'bench', inspection: 7 } }))).toBe(true);
    const open = station({ open: [{ inspection: 7 }] });
    expect(isDone('verdict', sight({ station: open, inspection: 7 }))).toBe(false);
    expect(isDone('verdict', sight({ inspection: undefined }))).toBe(false);
    expect(isDone('verdict', sight({ inspection: 7 }))).toBe(true);
    expect(isDone('held', sight({ route: { screen: 'held' } }))).toBe(true);
  });
});

test('a window remembers where the tour is, also where it was left, and takes nonsense for a first time', () => {
  for (const text of ['0', '7', 'left 3', 'over']) expect(tourText(readTour(text))).toBe(text);
  for (const text of [undefined, '', String(stopNames.length), 'left', '-1', '{}'])
    expect(readTour(text)).toEqual({ kind: 'not offered yet' });
});
