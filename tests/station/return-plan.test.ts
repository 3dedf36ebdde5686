/** The return plan through the contract: in steps that are counted, and stopped when nobody wants it any more. */
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import type { InputOf } from '../../src/station/contract.ts';
import { seededRandom } from '../support/seeded-random.ts';
import { demoStation, type TestStation } from '../support/station-fixture.ts';

type Input = InputOf<'return-plan.start'>['input'];

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
