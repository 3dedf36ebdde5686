/** The invented depot at its desk: what `demo-data/custody.json` says is what the screens are shown. */
import { expect, test } from 'vitest';
import { demo, demoStation } from '../support/station-fixture.ts';

test('the demo has devices out, one of them late, a kit that is out, and shelves of which one was counted', async () => {
  const { expectOutput } = await demoStation();
  await expectOutput('session.sign-in', { badge: demo.attendant });
  const status = await expectOutput('station.status', {});
  expect(status.state === 'ready' && status.counts).toMatchObject({ out: 5, overdueReturns: 1 });
  const { out } = await expectOutput('custody.list', {});
  expect(out.filter(({ user }) => user === 'Iker Vandalle').map(({ device }) => device.benchId)).toEqual(
    expect.arrayContaining(['V098PGTHYP', 'A4NJ7CGMYG', '1SDJ8GHACD']),
  );
  expect(out.filter(({ overdue }) => overdue).map(({ device, user }) => [device.benchId, user])).toEqual([
    ['3T69AQGSMR', 'Tilda Osterby'],
  ]);
  const { kits } = await expectOutput('kit.list', {});
  expect(kits).toMatchObject([{ name: 'Tower crew 1', code: 'TC1' }]);
  expect(kits[0]?.devices).toHaveLength(3);
  const { places } = await expectOutput('count.places', {});
  expect(places).toMatchObject([
    { place: 'R1', devices: 5, counted: { found: 4, missing: 1, wrongPlace: 1, by: 'Bram Kestrin' } },
    { place: 'R2', devices: 4 },
  ]);
  expect((await expectOutput('desk.user', { badge: 'HP10093' })).language).toBe('es');
});
