/**
 * Stations that bring fallen devices back are killed at random moments; each case is then where it was. `CASE_KILLS` sets how many
 * times; 12 where it is absent, for a station takes its second to open.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { BenchId } from '../../src/domain/brand.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import { demo, demoStation, type TestStation, testStation } from '../support/station-fixture.ts';
import { afterSteps, movingClock, type People, reachedBy, steps } from './case-steps.ts';

const kills = Number(process.env.CASE_KILLS ?? 12);
/** About as long as all steps of a device take. */
const longestMs = 500;
/** Stations that go on at the same time. */
const stations = 2;

let program: string;

/** Bundled, it starts several times as fast. What comes from `node_modules` stays outside. */
beforeAll(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'case-child-'));
  await symlink(join(productFolder, 'node_modules'), join(folder, 'node_modules'));
  program = join(folder, 'child.mjs');
  await build({
    configFile: false,
    root: productFolder,
    logLevel: 'error',
    build: {
      ssr: fileURLToPath(new URL('case-child.ts', import.meta.url)),
      outDir: folder,
      emptyOutDir: false,
      rolldownOptions: { output: { entryFileNames: 'child.mjs', chunkFileNames: 'child-[name].mjs' } },
    },
  });
});
afterAll(() => rm(join(program, '..'), { recursive: true, force: true }));

interface Acknowledged {
  readonly benchId: BenchId;
  readonly steps: number;
}

/** What had been acknowledged when the station was killed, whole lines only, the last of each device. */
const untilKilled = async (folder: string, round: number): Promise<readonly Acknowledged[]> => {
  const child = spawn(process.execPath, [program, folder, String(round)], {
    env: { ...process.env, PRODUCT_FOLDER: productFolder },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  const closed = once(child, 'close');
  await Promise.race([once(child.stdout, 'data'), closed]);
  await setTimeout(Math.random() * longestMs);
  child.kill('SIGKILL');
  await closed;
  const done = new Map<BenchId, number>();
  for (const line of said.slice(0, said.lastIndexOf('\n')).split('\n')) {
    const [benchId = '', count = ''] = line.split(' ');
    done.set(benchId as BenchId, Number(count));
  }
  return [...done].map(([benchId, count]) => ({ benchId, steps: count }));
};

const peopleAt = async ({ callAs }: TestStation): Promise<People> => {
  const people = { attendant: callAs('attendant'), administrator: callAs('office') };
  await people.attendant('session.sign-in', { badge: demo.attendant });
  await people.administrator('session.sign-in', { badge: demo.administrator });
  return people;
};

/** Every device of the round is where it was last acknowledged; the last one a whole step further at most, never between. */
const expectWhereItWas = async (folder: string, acknowledged: readonly Acknowledged[]): Promise<void> => {
  const station = await testStation({ folder, now: movingClock() });
  try {
    const people = await peopleAt(station);
    for (const { benchId, steps: done } of acknowledged) {
      const isLast = benchId === acknowledged.at(-1)?.benchId;
      const possible = isLast && done < steps.length ? [done, done + 1] : [done];
      expect(possible.map(afterSteps)).toContainEqual(await reachedBy(people, benchId));
    }
  } finally {
    await station.close();
  }
};

const keepKilling = async (times: number): Promise<readonly number[]> => {
  const { folder, close } = await demoStation();
  await close();
  const reached: number[] = [];
  for (let round = 1; round <= times; round += 1) {
    const acknowledged = await untilKilled(folder, round);
    await expectWhereItWas(folder, acknowledged);
    reached.push(acknowledged.at(-1)?.steps ?? 0);
  }
  const station = await testStation({ folder, now: movingClock() });
  await station.expectOutput('session.sign-in', { badge: demo.inspector });
  expect((await station.expectOutput('ledger.verify', {})).faults).toEqual([]);
  await station.close();
  return reached;
};

test(`a case is where it was after each of ${kills} kills, whatever step it was at`, async () => {
  const shares = Array.from({ length: stations }, (_, index) => Math.floor((kills + index) / stations));
  const reached = (await Promise.all(shares.map(keepKilling))).flat();
  expect(reached).toHaveLength(kills);
  expect(new Set(reached).size).toBeGreaterThan(1);
}, 300_000);
