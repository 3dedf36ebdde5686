/** Backups from the command line, and a record that comes back from one. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DemoBench, expectRefused, pin } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

const administrator = 'HP10017';
let bench: DemoBench;
let away: string;
beforeAll(async () => {
  bench = await DemoBench.open();
  away = await mkdtemp(join(tmpdir(), 'srl-bench-away-'));
}, 60_000);
afterAll(async () => {
  await bench.close();
  await rm(away, { recursive: true });
});

test('a backup comes back in an empty folder, and says what it would change in the one that it is of', async () => {
  const file = join(away, 'depot.zip');
  const made = await bench.run(['backup', file, '--badge', administrator]);
  expect(made.code, made.stderr).toBe(0);
  const { record, bytes } = made.json();
  expect((await readFile(file)).length).toBe(bytes);
  expectRefused(await bench.run(['backup', file, '--badge', administrator]), 'backup-file-exists');

  const elsewhere = join(away, 'new-pc');
  // The 44 of the depot, and the two that the demo inspects.
  const looked = await runCli(['--data', elsewhere, 'restore', file]);
  expect(looked.stdout).toMatch(/46 devices[\s\S]*Nothing was changed/);
  expect((await runCli(['--data', elsewhere, 'restore', file, '--yes'])).code).toBe(0);
  const verified = await runCli(['--data', elsewhere, '--json', 'ledger', 'verify']);
  expect(verified.json()).toMatchObject({ sound: true });

  await bench.addDevice('B-1', 'CLI-BACKUP-1');
  const compared = await bench.run(['restore', file, '--badge', administrator]);
  expect(compared.json().comparison).toMatchObject({ same: record.size, onlyInBackup: { events: 0 } });
  expect(compared.json().comparison.onlyHere.events).toBeGreaterThan(1);
  expectRefused(await bench.run(['restore', file, '--yes', '--badge', administrator]), 'pin-needed');
  const before = await bench.eventCount();
  const restored = await bench.run(['restore', file, '--yes', '--badge', administrator], {
    SRL_BENCH_PIN: pin,
  });
  expect(restored.code, restored.stderr).toBe(0);
  expect(restored.json().aside).toMatch(/^replaced-\d{8}T\d{6}Z$/);
  expect(await bench.eventCount()).toBeLessThan(before);
});

test('a backup of nobody, of no station and to no chosen folder is refused', async () => {
  expectRefused(await bench.run(['backup', join(away, 'other.zip')], {}), 'sign-in-needed');
  expectRefused(await bench.run(['backup', '--badge', administrator]), 'keeping-not-set');
  expectRefused(
    await bench.run(['restore', join(away, 'nowhere.zip'), '--badge', administrator]),
    'backup-not-readable',
  );
});
