/** The return plan from the command line: the worked example of DEVELOPERS.md, in sentences and as JSON. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DemoBench, expectRefused, inspector } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

let bench: DemoBench;
beforeAll(async () => {
  bench = await DemoBench.open();
}, 240_000);
afterAll(() => bench.close());

const signedIn = ['--badge', inspector];
const device = (id: string, lengthM: number, repairPrice?: number) => ({
  id,
  manufacturer: 'Norvane',
  lengthM,
  ...(repairPrice === undefined ? {} : { repairPrice }),
});
const example = {
  currency: 'EUR',
  months: 3,
  devices: [
    device('A', 6, 200),
    device('B', 6, 220),
    device('C', 6, 240),
    device('D', 6, 500),
    device('E', 2, 150),
    device('F', 2),
  ],
  manufacturers: [
    { name: 'Norvane', shipmentCost: 90, turnaroundMonths: 1, priceBreaks: [{ from: 3, percentOff: 10 }] },
  ],
  newDevices: [
    { lengthM: 6, price: 400, leadMonths: 1 },
    { lengthM: 2, price: 120, leadMonths: 1 },
  ],
  needs: [
    { lengthM: 6, ready: 0, perMonth: [0, 3, 4] },
    { lengthM: 2, ready: 0, perMonth: [0, 1, 1] },
  ],
};

test('the plan of a file is said in both languages, with what is saved, what is missing and what price would change it', async () => {
  const file = await bench.write('plan.json', example);
  const made = await bench.run(['return-plan', file, '--limit-of', 'D', ...signedIn]);
  expect(made.json()).toMatchObject({ found: true, total: 1204, oneByOne: 1450, replaceAll: 1720 });
  const said = async (language: string) =>
    (await runCli(['return-plan', file, '--data', bench.station, ...signedIn, '--language', language]))
      .stdout;
  const english = await said('en');
  expect(english).toContain('together with 2 more, for 180.00 EUR.');
  expect(english).toContain('D: scrap it and order a new 6 m device');
  expect(english).toContain('sent one by one: 1,450.00 EUR; the plan saves 246.00 EUR.');
  expect(english).toContain('F: nobody has said what its repair costs.');
  expect(await said('es')).toContain('D: deséchelo y pida uno nuevo de 6 m');
}, 240_000);

test('a file that contradicts itself, or asks for what cannot be, says why; one that is no plan is refused', async () => {
  const impossible = await bench.write('none.json', {
    ...example,
    newDevices: [],
    needs: [{ lengthM: 6, ready: 0, perMonth: [0, 3, 5] }],
  });
  const none = await bench.run(['return-plan', impossible, ...signedIn]);
  expect(none.json()).toMatchObject({ found: false, choices: [] });
  const months = await bench.write('months.json', { ...example, months: 5 });
  expect((await bench.run(['return-plan', months, ...signedIn])).json().sentences).toContain(
    'The need of 6 m is given for 3 months; the plan has another number of months.',
  );
  const wrong = await bench.write('wrong.json', { ...example, months: 'three' });
  expectRefused(await bench.run(['return-plan', wrong, ...signedIn]), 'input-invalid');
}, 240_000);

test('the plan of the record says what is missing, and what is entered is no longer missing', async () => {
  const before = (await bench.run(['return', 'basis', ...signedIn])).json();
  expect(before.missing).toContainEqual(expect.objectContaining({ kind: 'currency' }));
  await bench.run(['return', 'planning', '--months', '6', '--currency', 'EUR', ...signedIn]);
  await bench.run(['return', 'costs', 'Norvane', '--shipment', '90', '--break', '3:10', ...signedIn]);
  const after = (
    await bench.run([
      'return',
      'need',
      '6',
      '--needed',
      '4',
      '--price',
      '400',
      '--lead-time',
      '30',
      ...signedIn,
    ])
  ).json();
  expect(after).toMatchObject({ currency: 'EUR', months: 6 });
  expect(after.makers).toContainEqual(
    expect.objectContaining({
      manufacturer: 'Norvane',
      terms: { manufacturer: 'Norvane', shipmentCost: 90, priceBreaks: [{ from: 3, percentOff: 10 }] },
    }),
  );
  expect(after.lengths).toContainEqual(
    expect.objectContaining({
      lengthM: 6,
      plan: expect.objectContaining({
        needed: Array.from({ length: 12 }, () => 4),
        newDevice: { price: 400, leadTimeDays: 30 },
      }),
    }),
  );
  const table = join(bench.folder, 'plan.csv');
  const plan = (await bench.run(['return-plan', '--csv', table, ...signedIn])).json();
  expect(plan).toMatchObject({ found: true, currency: 'EUR' });
  expect(plan.sentences).toEqual(
    expect.arrayContaining(after.missing.map((each: { sentence: string }) => each.sentence)),
  );
  const lines = (await readFile(table, 'utf8')).trim().split('\r\n');
  expect(lines[0]).toContain('Bench ID,Model,Serial number,Length,Decision,Month,To be paid');
  expect(lines).toHaveLength(
    1 + plan.choices.length + plan.summary.filter((each: string) => each.includes('besides')).length,
  );
}, 240_000);
