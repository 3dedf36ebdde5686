/** The repair-or-replace plan: against everything that could be tried, and on an example that can be followed by hand. */
import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { type ReturnPlanInput, returnPlanInputSchema } from '../../../src/planning/returns/plan-input.ts';
import { planReturns } from '../../../src/planning/returns/plan-returns.ts';
import { planWhatCanBe } from '../../../src/planning/returns/plan-what-can-be.ts';
import { priceLimitOf } from '../../../src/planning/returns/price-limit.ts';
import { loadSolver } from '../../../src/planning/returns/solver.ts';
import { type SeededRandom, seededRandom } from '../../support/seeded-random.ts';
import { cheapestByTrying } from './brute-force.ts';

const solve = await loadSolver(loadHighs);
const plan = (input: ReturnPlanInput) => planReturns(input, solve);

/** The worked example of DEVELOPERS.md. */
const example = returnPlanInputSchema.parse({
  currency: 'EUR',
  months: 3,
  devices: [
    { id: 'A', manufacturer: 'Norvane', lengthM: 6, repairPrice: 200 },
    { id: 'B', manufacturer: 'Norvane', lengthM: 6, repairPrice: 220 },
    { id: 'C', manufacturer: 'Norvane', lengthM: 6, repairPrice: 240 },
    { id: 'D', manufacturer: 'Norvane', lengthM: 6, repairPrice: 500 },
    { id: 'E', manufacturer: 'Norvane', lengthM: 2, repairPrice: 150 },
    { id: 'F', manufacturer: 'Norvane', lengthM: 2 },
  ],
  manufacturers: [
    {
      name: 'Norvane',
      shipmentCost: 90,
      turnaroundMonths: 1,
      priceBreaks: [{ from: 3, percentOff: 10 }],
    },
  ],
  newDevices: [
    { lengthM: 6, price: 400, leadMonths: 1 },
    { lengthM: 2, price: 120, leadMonths: 1 },
  ],
  needs: [
    { lengthM: 6, ready: 0, perMonth: [0, 3, 4] },
    { lengthM: 2, ready: 0, perMonth: [0, 1, 1] },
  ],
});

describe('the worked example', () => {
  test('sends A, B and C together, replaces D and E, and leaves F undecided', () => {
    const made = plan(example);
    if (made.kind !== 'plan') throw new Error('There is a plan.');
    // 90 + 0.9 × (200 + 220 + 240) = 684; a new 6 m 400; a new 2 m 120: 1,204.
    expect(made.total).toBeCloseTo(1204, 6);
    expect(made.choices.map(({ id, kind }) => `${id} ${kind}`)).toEqual([
      'A repair',
      'B repair',
      'C repair',
      'D replace',
      'E replace',
      'F undecided',
    ]);
    expect(made.shipments).toMatchObject([
      { month: 0, ids: ['A', 'B', 'C'], percentOff: 10, shipmentCost: 90 },
    ]);
    // One by one: 3 × 90 + 660 + 520 = 1,450. All new: 4 × 400 + 120 = 1,720.
    expect(made.oneByOne).toBeCloseTo(1450, 6);
    expect(made.replaceAll).toBeCloseTo(1720, 6);
    expect(made.missing).toEqual([{ kind: 'repair price', id: 'F' }, { kind: 'service life' }]);
  });

  test('says which price would change the answer', () => {
    // With C: 90 + 0.9 × (420 + c) + 400 + 120 = 988 + 0.9 × c. Without it E goes along for the break:
    // 90 + 0.9 × (420 + 150) + 2 × 400 = 1,403. They meet at c = 461.11.
    const limit = priceLimitOf(example, 'C', solve);
    expect(limit?.kind === 'up to' && limit.price).toBeCloseTo(461.11, 1);
    // D with the break on it: 0.9 × d = 400, so d = 444.44.
    const ofD = priceLimitOf(example, 'D', solve);
    expect(ofD?.kind === 'up to' && ofD.price).toBeCloseTo(444.44, 1);
    // E with the break on it: 0.9 × e = 120, so e = 133.33.
    const ofE = priceLimitOf(example, 'E', solve);
    expect(ofE?.kind === 'up to' && ofE.price).toBeCloseTo(133.33, 1);
    expect(priceLimitOf(example, 'F', solve)).toBeUndefined();
  });
});

test('a device that can be sent later is waited for where its price break is worth it, and not where the need is before', () => {
  const later = { ...example.devices[2]!, availableFrom: 1 };
  const waits = {
    ...example,
    devices: [example.devices[0]!, example.devices[1]!, later],
    needs: [{ lengthM: 6, ready: 0, perMonth: [0, 0, 3] }],
  };
  const made = plan(waits);
  expect(made.kind === 'plan' && made.shipments.map(({ month, ids }) => [month, ids])).toEqual([
    [1, ['A', 'B', 'C']],
  ]);
  const urgent = plan({ ...waits, needs: [{ lengthM: 6, ready: 0, perMonth: [0, 2, 3] }] });
  expect(urgent.kind === 'plan' && urgent.shipments.map(({ month, ids }) => [month, ids])).toEqual([
    [0, ['A', 'B']],
    [1, ['C']],
  ]);
});

test('a device of which little life is left is charged for it, and one whose life ends before it is back is never sent', () => {
  const input = (lifeMonths: number): ReturnPlanInput => ({
    ...example,
    months: 12,
    devices: [{ ...example.devices[0]!, lifeMonths }],
    newDevices: [{ lengthM: 6, price: 400, leadMonths: 1, lifeMonths: 120 }],
    needs: [{ lengthM: 6, ready: 0, perMonth: [0, 0, 1, ...Array.from({ length: 9 }, () => 0)] }],
  });
  const choice = (lifeMonths: number): string | undefined => {
    const made = plan(input(lifeMonths));
    return made.kind === 'plan' ? made.choices[0]?.kind : made.kind;
  };
  // A new one costs a year 400 × 12 / 120 = 40; the shipment alone is 90.
  expect(choice(240)).toBe('replace');
  const free = { ...input(12), manufacturers: [{ ...example.manufacturers[0]!, shipmentCost: 0 }] };
  // 200 × 12 / 12 = 200 against 40; with 240 months of life 200 × 12 / 240 = 10.
  const short = plan(free);
  expect(short.kind === 'plan' && short.choices[0]?.kind).toBe('replace');
  const long = plan({ ...free, devices: [{ ...example.devices[0]!, lifeMonths: 240 }] });
  expect(long.kind === 'plan' && long.choices[0]?.kind).toBe('repair');
  const ended = plan({ ...free, devices: [{ ...example.devices[0]!, repairPrice: 0, lifeMonths: 1 }] });
  expect(ended.kind === 'plan' && ended.choices[0]?.kind).toBe('replace');
});

test('where the needs cannot be met it is said by how much, and where the input contradicts itself, what', () => {
  const impossible = plan({
    ...example,
    needs: [{ lengthM: 6, ready: 1, perMonth: [2, 9, 9] }],
    newDevices: [],
  });
  expect(impossible).toMatchObject({
    kind: 'no plan',
    // Nothing is back in the first month; then the four held ones are.
    shortfalls: [
      { lengthM: 6, month: 0, needed: 2, most: 1 },
      { lengthM: 6, month: 1, needed: 9, most: 5 },
      { lengthM: 6, month: 2, needed: 9, most: 5 },
    ],
  });
  expect(plan({ ...example, months: 4 })).toMatchObject({
    kind: 'no plan',
    faults: [
      { kind: 'months', lengthM: 6, months: 3 },
      { kind: 'months', lengthM: 2, months: 3 },
    ],
  });
  const twice = { ...example, devices: [...example.devices, example.devices[0]!] };
  expect(plan(twice)).toMatchObject({ kind: 'no plan', faults: [{ kind: 'twice', what: 'A' }] });
});

test('where the needs cannot be met, the most that can be there is planned, and it is said to be too few', () => {
  const { plan: made, input } = planWhatCanBe(
    { ...example, needs: [{ lengthM: 6, ready: 1, perMonth: [2, 9, 9] }], newDevices: [] },
    solve,
  );
  expect(made.shortfalls.map(({ needed, most }) => [needed, most])).toEqual([
    [2, 1],
    [9, 5],
    [9, 5],
  ]);
  expect(input.needs[0]!.perMonth).toEqual([1, 5, 5]);
  // All four of 6 m: 90 + 0.9 × (200 + 220 + 240 + 500).
  expect(made.kind === 'plan' && made.total).toBeCloseTo(1134, 6);
  expect(made.kind === 'plan' && made.choices.map(({ kind }) => kind)).toEqual([
    'repair',
    'repair',
    'repair',
    'repair',
    'undecided',
    'undecided',
  ]);
  expect(planWhatCanBe(example, solve).plan).toMatchObject({ kind: 'plan', shortfalls: [] });
});

test('nothing that is missing is invented: it is named, and the device stays held', () => {
  const made = plan({ ...example, manufacturers: [] });
  expect(made.kind === 'plan' && made.choices.every(({ kind }) => kind === 'undecided')).toBe(true);
  expect(made.missing).toContainEqual({ kind: 'manufacturer', id: 'A', manufacturer: 'Norvane' });
  const unneeded = plan({ ...example, needs: [example.needs[0]!] });
  expect(unneeded.missing).toContainEqual({ kind: 'need', lengthM: 2 });
  expect(unneeded.kind === 'plan' && unneeded.choices[4]).toEqual({ kind: 'undecided', id: 'E' });
  const { turnaroundMonths: _turnaround, ...terms } = example.manufacturers[0]!;
  const [first, ...others] = example.devices;
  const some = plan({
    ...example,
    devices: [{ ...first!, turnaroundMonths: 1 }, ...others],
    manufacturers: [terms],
  });
  expect(some.missing).toContainEqual({ kind: 'turnaround', id: 'B' });
  expect(some.kind === 'plan' && some.choices.map(({ kind }) => kind)).toEqual([
    'repair',
    ...Array.from({ length: 5 }, () => 'undecided'),
  ]);
});

test('what its manufacturer does not repair is replaced or scrapped, and nothing is missing of it', () => {
  const made = plan({
    ...example,
    devices: [
      { ...example.devices[0]!, repairable: false },
      { ...example.devices[5]!, repairable: false },
      { ...example.devices[5]!, id: 'G', repairable: false },
    ],
  });
  // Four of 6 m and one of 2 m are needed, and nothing else is there.
  expect(made.kind === 'plan' && made.choices.map(({ kind }) => kind)).toEqual([
    'replace',
    'replace',
    'scrap',
  ]);
  expect(made.missing).toEqual([{ kind: 'service life' }]);
});

test('new devices are ordered as late as the need allows, and what is there for some months only counts in those', () => {
  const made = plan({
    ...example,
    devices: [],
    needs: [{ lengthM: 6, ready: [2, 2, 1], perMonth: [2, 2, 3] }],
  });
  // Two are missing in the third month, and a new one takes a month.
  expect(made).toMatchObject({ total: 800, extraOrders: [{ lengthM: 6, month: 1, count: 2 }] });
});

const randomInput = (random: SeededRandom): ReturnPlanInput => {
  const months = random.whole(2, 3);
  const lengths = random.pick([[6], [6, 2]]);
  const names = random.pick([['Norvane'], ['Norvane', 'Quillmoor']]);
  const life = random.next() < 0.5;
  return returnPlanInputSchema.parse({
    currency: 'EUR',
    months,
    devices: Array.from({ length: random.whole(1, 5) }, (_, index) => ({
      id: `D${index}`,
      manufacturer: random.pick(names),
      lengthM: random.pick(lengths),
      ...(random.next() < 0.1 ? {} : { repairPrice: random.whole(5, random.pick([8, 60])) * 10 }),
      ...(random.next() < 0.1 ? { repairable: false } : {}),
      ...(random.next() < 0.2 ? { turnaroundMonths: random.whole(0, 2) } : {}),
      availableFrom: random.next() < 0.7 ? 0 : random.whole(0, months - 1),
      ...(life ? { lifeMonths: random.whole(1, 60) } : {}),
    })),
    manufacturers: names.map((name) => ({
      name,
      shipmentCost: random.whole(0, 15) * 10,
      turnaroundMonths: random.whole(0, 2),
      priceBreaks: [
        ...(random.next() < 0.6 ? [{ from: 2, percentOff: 5 }] : []),
        ...(random.next() < 0.6 ? [{ from: 3, percentOff: random.pick([10, 25]) }] : []),
      ],
    })),
    newDevices: lengths
      .filter(() => random.next() < 0.8)
      .map((lengthM) => ({
        lengthM,
        price: random.whole(10, 80) * 10,
        leadMonths: random.whole(0, 2),
        ...(life ? { lifeMonths: random.whole(1, random.pick([3, 120])) } : {}),
      })),
    needs: lengths.map((lengthM) => ({
      lengthM,
      ready:
        random.next() < 0.7 ? random.whole(0, 1) : Array.from({ length: months }, () => random.whole(0, 2)),
      perMonth: Array.from({ length: months }, () => random.whole(0, 3)),
    })),
  });
};

test('on 200 random instances no plan is cheaper, and there is one just where there can be one', () => {
  const random = seededRandom(20_261_130);
  let planned = 0;
  for (let count = 0; count < 200; count += 1) {
    const input = randomInput(random);
    const best = cheapestByTrying(input);
    const made = plan(input);
    if (best === undefined || best === Infinity) {
      expect(made.kind).toBe('no plan');
      if (made.kind === 'no plan') expect(made.shortfalls.length).toBeGreaterThan(0);
      continue;
    }
    expect(made.kind).toBe('plan');
    if (made.kind === 'plan') expect(made.charged).toBeCloseTo(best, 3);
    planned += 1;
  }
  expect(planned).toBeGreaterThan(80);
}, 300_000);
