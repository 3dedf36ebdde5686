/** Who is this, and the request for markings, on the command line. */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { demo } from '../support/station-fixture.ts';
import { DemoBench } from './demo-bench.ts';

test('a device is searched, proposed by one, confirmed by another, and asked for of its manufacturer', async () => {
  const bench = await DemoBench.open();
  onTestFinished(() => bench.close());
  const { folder } = bench;
  const run = (badge: string, ...args: string[]) =>
    bench.run([...args, '--badge', badge], { SRL_BENCH_PIN: demo.pin });
  const facts = join(folder, 'facts.json');
  await writeFile(facts, JSON.stringify({ serial: 'Q25A3?03?', housingColour: 'orange' }));

  const searched = await run(demo.inspector, 'identity', 'search', facts, '--length', '10.1');
  expect(searched.json().candidates[0].device.serial).toBe('Q25A30037');
  const opened = await run(demo.inspector, 'identity', 'open', facts, '--kept-at', 'Cage 2');
  const { identityCase, keptAt, ranking } = opened.json();
  expect(keptAt).toBe('Cage 2');
  const number = String(identityCase);
  const benchId = String(ranking.candidates[0].benchId);
  expect((await run(demo.inspector, 'identity', 'propose', number, benchId)).code).toBe(0);
  const confirm = ['identity', 'confirm', number, benchId, '--looked-at-device'];
  const alone = await run(demo.inspector, ...confirm);
  expect(alone.code).toBe(1);
  expect(alone.stdout + alone.stderr).toContain('identity-second-person');
  expect((await run(demo.attendant, ...confirm)).code).toBe(0);
  expect((await run(demo.attendant, 'identity', 'show', number)).json().state).toBe('taken');

  const csv = join(folder, 'markings.csv');
  await run(demo.attendant, 'markings', '--csv', csv);
  const lines = (await readFile(csv, 'utf8')).split('\r\n');
  expect(lines[0]).toBe(
    '"manufacturer","model","serial","serialIsPresumed","dateOfManufacture","benchId","elements"',
  );
  expect(lines.find((line) => line.includes('Q25A30037'))).toContain('"yes"');

  const nonsense = await run(demo.inspector, 'identity', 'search', '--colour', 'mauve');
  expect(nonsense.code).toBe(1);
  const nothing = await run(demo.inspector, 'identity', 'search');
  expect(nothing.stdout + nothing.stderr).toContain('identity-nothing-seen');
}, 120_000);
