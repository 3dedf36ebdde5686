/** Corrections on the command line. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { demo } from '../support/station-fixture.ts';
import { DemoBench, expectRefused } from './demo-bench.ts';

test('a device, a signed answer and a name are corrected with a reason and a PIN, and the export says what was and what is', async () => {
  const bench = await DemoBench.open();
  onTestFinished(() => bench.close());
  const run = (badge: string, ...args: string[]) =>
    bench.run([...args, '--badge', badge], { SRL_BENCH_PIN: demo.pin });
  const { devices } = (await run(demo.inspector, 'device', 'list', '--standing', 'in service')).json();
  const { benchId, serial } = devices[0];
  const correct = ['device', 'correct', benchId, '--because', 'Misread'];

  const date = [...correct, '--field', 'dateOfManufacture', '--now', '2019-07'];
  expectRefused(await run(demo.inspector, ...date), 'amend-reading-needed');
  expectRefused(await run(demo.attendant, ...date, '--marking-read-now'), 'amend-not-entitled');
  expect((await run(demo.inspector, ...date, '--marking-read-now')).code).toBe(0);
  expectRefused(await run(demo.inspector, ...correct), 'input-invalid');
  const { device } = (await run(demo.inspector, 'device', 'show', benchId)).json();
  expect(device).toMatchObject({ dateOfManufacture: '2019-07', serial, standing: 'in service' });

  const { inspection } = device.inspections[0];
  const answer = [...correct, '--inspection', String(inspection), '--check', 'housing.body', '--now'];
  expectRefused(await run(demo.inspector, ...answer, 'good'), 'input-invalid');
  expectRefused(await run(demo.inspector, ...answer, '{"kind":"good"}'), 'amend-nothing-changed');

  const name = ['person', 'correct', 'P006', '--name', 'Nadja Solheim', '--because', 'Misspelt'];
  expectRefused(await run(demo.inspector, ...name), 'role-needed');
  expect((await run(demo.administrator, ...name)).code).toBe(0);

  await run(demo.administrator, 'export', join(bench.folder, 'out'));
  const csv = await readFile(join(bench.folder, 'out', 'corrections.csv'), 'utf8');
  const rows = csv.trim().split('\r\n');
  expect(rows.filter((row) => row.includes('Misread'))).toHaveLength(1);
  expect(rows.find((row) => row.includes('2019-07'))).toContain(device.amendments[0].correction.was);
  expect(rows.find((row) => row.includes('Misspelt'))).toContain('Nadia Solheim');
}, 120_000);
