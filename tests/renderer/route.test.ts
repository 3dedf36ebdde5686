/** The routes of the window and the hash of the address. */
import { describe, expect, it } from 'vitest';
import { hashOf, type Route, routeOf } from '../../renderer/navigation/route.ts';
import type { BenchId } from '../../src/domain/brand.ts';

const benchId = 'K7M3X4Q9TD' as BenchId;

const routes: readonly (readonly [Route, string])[] = [
  [{ screen: 'start' }, '#/'],
  [{ screen: 'register' }, '#/register'],
  [{ screen: 'register', filter: 'overdue' }, '#/register?show=overdue'],
  [{ screen: 'register', filter: 'unproved' }, '#/register?show=unproved'],
  [{ screen: 'new-device' }, '#/new-device'],
  [{ screen: 'new-device', benchId }, '#/new-device?id=K7M3X4Q9TD'],
  [{ screen: 'device', benchId }, '#/device/K7M3X4Q9TD'],
  [{ screen: 'lifeline', benchId }, '#/lifeline/K7M3X4Q9TD'],
  [{ screen: 'bench' }, '#/bench'],
  [{ screen: 'bench', inspection: 12 }, '#/bench/12'],
  [{ screen: 'tag', benchId, kind: 'status' }, '#/tag/K7M3X4Q9TD/status'],
  [{ screen: 'who' }, '#/who'],
  [{ screen: 'who', identityCase: 3 }, '#/who/3'],
  [{ screen: 'relabel', benchId }, '#/relabel/K7M3X4Q9TD'],
  [{ screen: 'markings' }, '#/markings'],
  [{ screen: 'held' }, '#/held'],
  [{ screen: 'held', benchId }, '#/held/K7M3X4Q9TD'],
  [{ screen: 'returns' }, '#/returns'],
  [{ screen: 'returns', batch: 3 }, '#/returns/3'],
  [{ screen: 'returns-plan' }, '#/returns-plan'],
  [{ screen: 'returns-plan', page: 'data' }, '#/returns-plan/data'],
  [{ screen: 'returns-plan', page: 2 }, '#/returns-plan/2'],
  [{ screen: 'corrections', benchId }, '#/corrections/K7M3X4Q9TD'],
  [{ screen: 'person', personId: 'P007' }, '#/person/P007'],
  [{ screen: 'records' }, '#/records'],
  [{ screen: 'records', benchId }, '#/records?device=K7M3X4Q9TD'],
  [{ screen: 'record', inspection: 12 }, '#/records/12'],
  [{ screen: 'setup' }, '#/setup'],
  [{ screen: 'setup', panel: 'keeping' }, '#/setup/keeping'],
];

describe('a route', () => {
  it.each(routes)('%j stands in the address as %s and is read back', (route, hash) => {
    expect(hashOf(route)).toBe(hash);
    expect(routeOf(hash)).toEqual(route);
  });

  it('carries any scanned code through the address', () => {
    const code = 'A/B?c=%20&d #é+1';
    expect(routeOf(hashOf({ screen: 'new-device', code }))).toEqual({ screen: 'new-device', code });
  });

  it.each(['', '#/nowhere', '#/device/not-an-id', '#/tag/K7M3X4Q9TD/poster', '#/device/%E0%A4%A'])(
    'is the start screen where the address %j leads nowhere',
    (hash) => {
      expect(routeOf(hash)).toEqual({ screen: 'start' });
    },
  );
});
