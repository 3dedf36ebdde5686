/** Pictures from the command line: named by an answers file, listed, counted. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DemoBench, example, expectRefused, inspector, pin } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

let bench: DemoBench;
beforeAll(async () => {
  bench = await DemoBench.open();
  const picture = sharp({ create: { width: 60, height: 40, channels: 3, background: '#864' } });
  await writeFile(join(bench.folder, 'crushed.png'), await picture.png().toBuffer());
}, 60_000);
afterAll(() => bench.close());

const written = async (code: string, pictures: Record<string, unknown>) => ({
  ...(await example('three-findings.json')),
  code,
  pictures,
});

test('an inspection by file keeps the pictures that it names, from the folder of the file', async () => {
  const before = (await bench.run(['evidence'])).json().count;
  const benchId = await bench.addDevice('E-1', 'CLI-EV-1');
  const pictures = { 'lifeline.shape': ['crushed.png'], 'marking.dateOfManufacture': ['crushed.png'] };
  const file = await bench.write('with-pictures.json', await written('CLI-EV-1', pictures));
  const run = await bench.run(['inspect', file], { SRL_BENCH_PIN: pin });
  expect(run.code, run.stderr + run.stdout).toBe(0);
  const { inspection } = run.json();
  const listed = await bench.run(['evidence', benchId, '--badge', inspector]);
  expect(listed.json().pictures).toMatchObject([
    {
      with: 'inspection',
      inspection,
      check: 'marking.dateOfManufacture',
      width: 60,
      height: 40,
      state: 'kept',
    },
    { with: 'inspection', inspection, check: 'lifeline.shape', width: 60, height: 40, state: 'kept' },
  ]);
  // The same bytes are one file.
  expect((await bench.run(['evidence'])).json().count).toBe(before + 1);
});

test('a picture that cannot be read, is none, or is of no check leaves nothing recorded', async () => {
  await bench.addDevice('E-2', 'CLI-EV-2');
  const before = await bench.eventCount();
  await bench.write('words.png', 'no picture');
  for (const [pictures, code] of [
    [{ 'lifeline.shape': ['nowhere.png'] }, 'file-unreadable'],
    [{ 'lifeline.shape': ['words.png'] }, 'image-unreadable'],
    [{ 'housing.colour': ['crushed.png'] }, 'check-unknown'],
    [{ 'lifeline.shape': [] }, 'answers-file-invalid'],
  ] as const) {
    const file = await bench.write('spoilt.json', await written('CLI-EV-2', pictures));
    expectRefused(await bench.run(['inspect', file], { SRL_BENCH_PIN: pin }), code);
  }
  expect(await bench.eventCount()).toBe(before);
});

test('readings of the diameter are given in millimetres or inches, and lifeline shows them with what decides', async () => {
  const registered = (
    await bench.run(['device', 'list', '--search', 'TMR-2019-585', '--badge', inspector])
  ).json();
  const { benchId } = registered.devices[0];
  const good = await example('pass.json');
  const diameters = [
    { position: '5 ft', diameter: '0.19 in' },
    { position: 15, diameter: 4.79 },
    { position: '28.5 m', diameter: '4.9 mm' },
  ];
  const { code: _code, ...answers } = good;
  const file = await bench.write('diameters.json', {
    ...answers,
    benchId,
    answers: {
      ...good.answers,
      'payout.full-length': { length: '30 m' },
      'lifeline.diameter': { diameters },
    },
  });
  const run = await bench.run(['inspect', file], { SRL_BENCH_PIN: pin });
  expect(run.code, run.stdout).toBe(0);
  const { inspections, trend } = (await bench.run(['lifeline', benchId, '--badge', inspector])).json();
  // 5 ft = 1.524 m and 0.19 in = 4.826 mm exactly (NIST SP 811).
  expect(inspections[0].readings).toEqual([
    { positionM: expect.closeTo(1.524, 9), diameterMm: expect.closeTo(4.826, 9) },
    { positionM: 15, diameterMm: 4.79 },
    { positionM: 28.5, diameterMm: 4.9 },
  ]);
  expect(trend.kind).toBe('trend');
  const said = await runCli(['lifeline', benchId, '--data', bench.station, '--badge', inspector]);
  expect(said.stdout).toContain('The manufacturer’s criterion decides.');
});

test('a diameter that is none, that cannot be, or that leaves a third of the lifeline out is refused', async () => {
  const registered = (
    await bench.run(['device', 'list', '--search', 'TMR-2022-792', '--badge', inspector])
  ).json();
  const { benchId } = registered.devices[0];
  const good = await example('pass.json');
  const { code: _code, ...rest } = good;
  const before = await bench.eventCount();
  for (const [diameters, code] of [
    [[{ position: 1, diameter: 'thin' }], 'answers-file-invalid'],
    [[{ position: 1, diameter: 49 }], 'diameter-impossible'],
    [[{ position: 1, diameter: 4.9 }], 'diameter-places'],
    [[], 'diameter-places'],
  ] as const) {
    const file = await bench.write('spoilt.json', {
      ...rest,
      benchId,
      answers: { ...good.answers, 'payout.full-length': { length: 30 }, 'lifeline.diameter': { diameters } },
    });
    expectRefused(await bench.run(['inspect', file], { SRL_BENCH_PIN: pin }), code);
  }
  expect(await bench.eventCount()).toBe(before);
});
