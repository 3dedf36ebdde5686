/** The repair-or-replace plan of 300 held devices, each with a quote of its own, over a year. */

import { planInThread } from '../../src/planning/returns/plan-in-thread.ts';
import { type ReturnPlanInput, returnPlanInputSchema } from '../../src/planning/returns/plan-input.ts';
import { seededRandom } from '../support/seeded-random.ts';
import { type Benchmark, timed } from './measurement.ts';

const lengths = [2, 6, 10, 15] as const;
const makers = ['Norvane', 'Quillmoor', 'Tessaline'] as const;

/**
 * One in five comes to be held only in the fourth or seventh month, as where a revalidation falls due; quotes go by ten, and
 * lives end by whole years.
 */
export const depotOf = (size: number): ReturnPlanInput => {
  const random = seededRandom(size);
  const months = 12;
  const perLength = Math.floor(size / lengths.length);
  return returnPlanInputSchema.parse({
    currency: 'EUR',
    months,
    devices: Array.from({ length: size }, (_, index) => ({
      id: `D${index}`,
      manufacturer: random.pick(makers),
      lengthM: random.pick(lengths),
      repairPrice: random.whole(8, 70) * 10,
      availableFrom: random.next() < 0.8 ? 0 : random.pick([3, 6]),
      lifeMonths: random.whole(1, 12) * 12,
    })),
    manufacturers: makers.map((name, index) => ({
      name,
      shipmentCost: 90 + 40 * index,
      turnaroundMonths: 2 + (index % 2),
      priceBreaks: [
        { from: 10, percentOff: 8 },
        { from: 25, percentOff: 15 },
      ],
    })),
    newDevices: lengths.map((lengthM) => ({
      lengthM,
      price: 260 + 45 * lengthM,
      leadMonths: 2,
      lifeMonths: 120,
    })),
    needs: lengths.map((lengthM) => ({
      lengthM,
      ready: 5,
      perMonth: Array.from({ length: months }, (_, month) =>
        month < 3 ? 5 : 5 + Math.floor((perLength * 0.6 * (month - 2)) / months),
      ),
    })),
  });
};

export const peer = 'none: by the clock alone';

export const benchmark: Benchmark = async () => {
  const input = depotOf(300);
  let steps = 0;
  const { medianMs } = await timed(1, async () => {
    const { plan } = await planInThread(
      { input, limitsOf: [], whatCanBe: false },
      { onProgress: () => (steps += 1) },
    );
    if (plan.kind !== 'plan') throw new Error('There is no plan.');
    const sent = plan.choices.filter(({ kind }) => kind === 'repair').length;
    console.log(
      `${sent} of 300 are repaired in ${plan.shipments.length} shipments; ${steps} steps were told.`,
    );
  });
  return [{ name: '300 held devices planned over a year', value: medianMs / 1000, unit: 's', budget: 10 }];
};
