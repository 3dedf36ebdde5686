/** The return plan through the contract: in steps that are counted, and stopped when nobody wants it any more. */
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { type BenchId, metres } from '../../../src/domain/brand.ts';
import type { InputOf } from '../../../src/station/contract.ts';
import { seededRandom } from '../../support/seeded-random.ts';
import { demo, demoStation, type TestStation } from '../../support/station-fixture.ts';
import { sampleDevice } from '../sample-device.ts';

type Input = NonNullable<InputOf<'return-plan.start'>['input']>;

const input = (devices: number): Input => {
  const random = seededRandom(devices);
  return {
    currency: 'EUR',
    months: 6,
    devices: Array.from({ length: devices }, (_, index) => ({
      id: `D${index}`,
      manufacturer: random.pick(['Norvane', 'Quillmoor']),
      lengthM: random.pick([2, 6, 10]),
      repairPrice: random.whole(80, 600),
    })),
    manufacturers: ['Norvane', 'Quillmoor'].map((name) => ({
      name,
      shipmentCost: 120,
      turnaroundMonths: 2,
      priceBreaks: [{ from: 5, percentOff: 10 }],
    })),
    newDevices: [2, 6, 10].map((lengthM) => ({ lengthM, price: 200 + 30 * lengthM, leadMonths: 1 })),
    needs: [2, 6, 10].map((lengthM) => ({ lengthM, ready: 0, perMonth: [0, 0, 1, 2, 2, 3] })),
  };
};

const ended = async ({ expectOutput }: TestStation, job: number) => {
  for (;;) {
    const status = await expectOutput('return-plan.status', { job });
    if (status.state !== 'working') return status;
    await wait(30);
  }
};

test('a plan is made in a thread of its own, and says what is to be done with each device', async () => {
  const station = await demoStation();
  const { job } = await station.expectOutput('return-plan.start', { input: input(12), limitsOf: ['D0'] });
  const end = await ended(station, job);
  if (end.state !== 'planned') throw new Error(end.sentence);
  expect(end.plan.choices.map(({ id }) => id)).toEqual(input(12).devices.map(({ id }) => id));
  expect(end.plan.limits).toMatchObject([{ id: 'D0' }]);
  expect(end.plan.sentences.length).toBeGreaterThan(12);
}, 240_000);

test('a plan that is canceled ends, and one that is not known is refused', async () => {
  const station = await demoStation();
  const { job } = await station.expectOutput('return-plan.start', { input: input(200) });
  await station.expectOutput('return-plan.cancel', { job });
  expect(await ended(station, job)).toMatchObject({ state: 'refused', code: 'return-plan-canceled' });
  expect(await station.expectError('return-plan.status', { job: 99 })).toMatchObject({
    code: 'return-plan-job-not-known',
  });
}, 240_000);

describe('from the record', () => {
  /** Three devices of one model, removed for damage: their manufacturer has to repair them. */
  const stationWithHeld = async () => {
    const station = await demoStation();
    const benchIds: BenchId[] = [];
    for (const serial of ['Q26C49101', 'Q26C49102', 'Q26C49103']) {
      const { benchId } = await station.expectOutput('device.register', sampleDevice(serial));
      await station.expectOutput('device.remove', { benchId, ground: 'damage', note: 'Bent hook.' });
      benchIds.push(benchId);
    }
    const record = (change: InputOf<'returns-basis.record'>['change']) =>
      station.expectOutput('returns-basis.record', { change });
    const basis = () => station.expectOutput('returns-basis.show', {});
    const plan = async (limitsOf: readonly string[] = []) => {
      const { job } = await station.expectOutput('return-plan.start', { limitsOf: [...limitsOf] });
      const end = await ended(station, job);
      if (end.state !== 'planned') throw new Error(end.sentence);
      return { ...end.plan, job };
    };
    return { station, benchIds, record, basis, plan };
  };

  const choicesOf = (plan: { choices: readonly { id: string; kind: string }[] }, ids: readonly string[]) =>
    plan.choices.filter(({ id }) => ids.includes(id)).map(({ kind }) => kind);

  test('what nobody has said is named, and the devices stay held', async () => {
    const { benchIds, basis, plan } = await stationWithHeld();
    const of = await basis();
    expect(of.makers).toContainEqual({ manufacturer: 'Quillmoor', devices: expect.any(Number) });
    const sentences = of.missing.map(({ sentence }) => sentence);
    expect(sentences).toContainEqual('Nobody has said which currency the prices are in.');
    expect(sentences).toContainEqual(
      expect.stringContaining('Quillmoor Stayline 50 ft: the manufacturer was not asked yet'),
    );
    expect(sentences).toContainEqual(
      expect.stringContaining('15.24 m: nobody has said how many are needed.'),
    );
    expect(choicesOf(await plan(), benchIds)).toEqual(['undecided', 'undecided', 'undecided']);
  }, 240_000);

  test('two of three are sent together where two are needed, what cannot be met is said, and the shipment is packed', async () => {
    const { station, benchIds, record, basis, plan } = await stationWithHeld();
    const { lengths } = await basis();
    const { inService } = lengths.find(({ lengthM }) => lengthM === 15.24)!;
    await record({ what: 'plan', months: 4, currency: 'EUR' });
    await record({ what: 'maker', manufacturer: 'Quillmoor', shipmentCost: 90, priceBreaks: [] });
    await record({
      what: 'length',
      lengthM: metres(15.24),
      needed: Array.from({ length: 12 }, () => inService + 2),
      newDevice: { price: 400, leadTimeDays: 75 },
    });
    // The depot holds another one of this model: nobody has said what that one costs.
    for (const benchId of benchIds)
      await station.expectOutput('device-quote.record', { benchId, price: 100, leadTimeDays: 45 });
    const made = await plan([benchIds[0]!]);
    // 90 + 2 × 100 against 2 × (90 + 100) one by one, and 2 × 400 new.
    expect(made).toMatchObject({ total: 290, oneByOne: 380, replaceAll: 800, currency: 'EUR' });
    expect(choicesOf(made, benchIds).sort()).toEqual(['repair', 'repair', 'scrap']);
    // A repair takes 45 days and a new one 75: nothing is there before the third month.
    expect(made.shortfalls).toEqual([
      `March 2026 – April 2026: ${inService + 2} ready 15.24 m devices are needed, and ${inService} at most can be there.`,
    ]);
    // The others can be repaired for 100 each: one that asks for more is left out.
    expect(made.limits).toMatchObject([{ id: benchIds[0]!, limit: { kind: 'up to', price: 100 } }]);
    // A quote of its own makes the third the cheapest.
    const third = benchIds.find((id) => !made.shipments[0]!.ids.includes(id))!;
    await station.expectOutput('device-quote.record', { benchId: third, price: 60, leadTimeDays: 45 });
    const quoted = await plan();
    expect(quoted.total).toBe(250);
    expect(quoted.shipments[0]!.ids).toContain(third);
    const packed = made.shipments[0]!.ids as BenchId[];
    await station.expectOutput('return-batch.add', { benchIds: packed });
    expect(await station.expectOutput('return-plan.status', { job: made.job })).toMatchObject({
      isCurrent: false,
    });
    // Those two are counted on, so the third is not needed.
    const again = await plan();
    expect(choicesOf(again, benchIds)).toEqual(['scrap']);
    expect(again.apart.map(({ benchId }) => benchId)).toEqual(expect.arrayContaining(packed));
    expect(again.total).toBe(0);
  }, 240_000);

  test('what was entered stays over a restart, part by part, and a price break that is no better is refused', async () => {
    const { station, record } = await stationWithHeld();
    const breaks = [{ from: 5, percentOff: 10 }];
    await record({ what: 'maker', manufacturer: 'Norvane', shipmentCost: 90, priceBreaks: breaks });
    await record({ what: 'plan', months: 6, currency: 'EUR' });
    expect(
      await station.expectError('returns-basis.record', {
        change: {
          what: 'maker',
          manufacturer: 'Norvane',
          shipmentCost: 0,
          priceBreaks: [...breaks, { from: 9, percentOff: 10 }],
        },
      }),
    ).toMatchObject({ code: 'price-break-no-better', field: 'priceBreaks' });
    const again = await station.reopen();
    await again.expectOutput('session.sign-in', { badge: demo.inspector });
    const { makers, months, currency } = await again.expectOutput('returns-basis.show', {});
    expect({ months, currency }).toEqual({ months: 6, currency: 'EUR' });
    expect(makers.find(({ manufacturer }) => manufacturer === 'Norvane')?.terms).toMatchObject({
      shipmentCost: 90,
      priceBreaks: breaks,
    });
  }, 240_000);
});
