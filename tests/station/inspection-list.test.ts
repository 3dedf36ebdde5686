/** The signed inspections over the fleet, held against the history on each device's card. */
import { describe, expect, test } from 'vitest';
import { demo, demoStation, type TestStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';

/** Every signed inspection as the device cards have it, the latest day first, and of one day the highest number. */
const signedOnCards = async ({ expectOutput }: TestStation) => {
  const { devices } = await expectOutput('device.list', { limit: 500 });
  const all = [];
  for (const { benchId } of devices) {
    const { device } = await expectOutput('device.show', { benchId });
    for (const { state, inspection, signedOn, signedBy, verdict } of device.inspections)
      if (state === 'signed') all.push({ inspection, benchId, signedOn: signedOn!, signedBy, verdict });
  }
  return all.toSorted((a, b) => b.signedOn.localeCompare(a.signedOn) || b.inspection - a.inspection);
};

const listed = async (station: TestStation, query: object) => {
  const { inspections } = await station.expectOutput('inspection.list', { limit: 500, ...query });
  return inspections.map(({ inspection, benchId, signedOn, signedBy, verdict }) => ({
    inspection,
    benchId,
    signedOn,
    signedBy,
    verdict,
  }));
};

describe('the list of signed inspections', () => {
  test('has every one, newest first, and by day, person, verdict and device just those', async () => {
    const station = await demoStation();
    const all = await signedOnCards(station);
    expect(all.length).toBeGreaterThan(50);
    expect(await listed(station, {})).toEqual(all);
    const { people } = await station.expectOutput('person.list', {});
    const teo = people.find(({ name }) => name === 'Teo Arandal')!;
    const byTeo = all.filter(({ signedBy }) => signedBy === teo.name);
    expect(byTeo.length).toBeGreaterThan(0);
    expect(await listed(station, { personId: teo.personId })).toEqual(byTeo);
    const removed = all.filter(({ verdict }) => verdict === 'remove from service');
    expect(await listed(station, { verdict: 'remove from service' })).toEqual(removed);
    const { benchId, signedOn } = all[10]!;
    expect(await listed(station, { benchId })).toEqual(all.filter((each) => each.benchId === benchId));
    expect(await listed(station, { from: signedOn })).toEqual(
      all.filter((each) => each.signedOn >= signedOn),
    );
    expect(await listed(station, { from: signedOn, until: signedOn, personId: teo.personId })).toEqual(
      byTeo.filter((each) => each.signedOn === signedOn),
    );
    expect(await listed(station, { until: '2020-01-01' })).toEqual([]);
  });

  test('comes page by page, and says when there is more', async () => {
    const station = await demoStation();
    const all = await listed(station, {});
    const first = await station.expectOutput('inspection.list', { limit: 7 });
    const second = await station.expectOutput('inspection.list', { limit: 7, offset: 7 });
    expect([...first.inspections, ...second.inspections].map(({ inspection }) => inspection)).toEqual(
      all.slice(0, 14).map(({ inspection }) => inspection),
    );
    expect(first.more).toBe(true);
    const last = await station.expectOutput('inspection.list', { limit: 7, offset: all.length - 7 });
    expect([last.inspections.length, last.more]).toEqual([7, false]);
  });

  test('has an inspection from its signature on, not from its start', async () => {
    const station = await demoStation();
    const { devices } = await station.expectOutput('device.list', { standing: ['new'] });
    const { benchId } = devices.find(({ openInspection }) => openInspection === undefined)!;
    const walked = await walk(station, benchId);
    expect(await listed(station, { benchId })).toEqual([]);
    await station.expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
    expect(await listed(station, { benchId })).toMatchObject([
      { inspection: walked.inspection, verdict: 'pass' },
    ]);
    await station.expectOutput('session.sign-in', { badge: demo.administrator });
    await station.expectOutput('ledger.rebuild', {});
    expect(await listed(station, { benchId })).toHaveLength(1);
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  });
});
