/** A real station over a folder of its own that goes away after the test. */
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type Instant, instant } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { Call, CallError, InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import { openStation, type Station, type StationOptions } from '../../src/station/station.ts';
import { madeOnce } from './run-folder.ts';

/** A clock that stands still until it is told to move. */
export class TestClock {
  #now: number;
  constructor(at: string) {
    this.#now = Date.parse(at);
  }
  readonly now = (): Instant => instant(new Date(this.#now).toISOString());
  advance(by: { seconds?: number; days?: number }): void {
    this.#now += (by.seconds ?? 0) * 1000 + (by.days ?? 0) * 86_400_000;
  }
}

export interface TestStation {
  readonly station: Station;
  readonly folder: string;
  readonly clock: TestClock;
  /** The contract as one window calls it, in English. */
  readonly call: Call;
  /** The same, of another window. */
  callAs(session: string): Call;
  /** The output of a call that must succeed. */
  expectOutput<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>>;
  /** The error of a call that must be refused. */
  expectError<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<CallError>;
  close(): Promise<void>;
  /** Closes the station and opens it again over the same folder, as after a restart. */
  reopen(): Promise<TestStation>;
}

export const temporaryFolder = async (): Promise<string> => {
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
};

/** The moment at which the invented depot of the tests was loaded, and at which its tests begin. */
const demoLoadedAt = '2026-03-10T08:00:00.000Z';

export const testStation = async (
  options: Partial<StationOptions> = {},
  clock = new TestClock(demoLoadedAt),
): Promise<TestStation> => {
  const folder = options.folder ?? (await temporaryFolder());
  const station = await openStation({ now: clock.now, ...options, folder });
  if (isRefusal(station)) throw new Error(`The station did not open: ${station.code}`);
  let open = true;
  const close = async () => {
    if (open) await station.close();
    open = false;
  };
  onTestFinished(close);
  const callAs =
    (session: string): Call =>
    async (operation, input) =>
      (await station.call({
        session,
        operation,
        input,
        language: 'en',
      })) as Awaited<ReturnType<Call>> as never;
  const call = callAs('window');
  return {
    station,
    folder,
    clock,
    call,
    callAs,
    close,
    expectOutput: async (name, input) => {
      const result = await call(name, input);
      if (!result.ok) throw new Error(`${name} was refused: ${result.error.code}: ${result.error.sentence}`);
      return result.output;
    },
    expectError: async (name, input) => {
      const result = await call(name, input);
      if (result.ok) throw new Error(`${name} was not refused.`);
      return result.error;
    },
    reopen: async () => {
      await close();
      return testStation({ ...options, folder }, clock);
    },
  };
};

/** The invented depot as it was loaded at a moment, once in a run of the tests. */
const loadedDemo = (name: string, now?: () => Instant): Promise<string> =>
  madeOnce(name, async (folder) => {
    const station = await openStation({ folder, ...(now === undefined ? {} : { now }) });
    if (isRefusal(station)) throw new Error(`The station did not open: ${station.code}`);
    const loaded = await station.call({
      session: 'load',
      operation: 'station.load-demo',
      input: {},
      language: 'en',
    });
    await station.close();
    if (!loaded.ok) throw new Error(loaded.error.sentence);
  });

/** A data folder of the test's own with the invented depot, loaded by the clock of the machine. */
export const demoFolderOfToday = async (): Promise<string> => {
  const folder = await temporaryFolder();
  await cp(await loadedDemo('demo-of-today'), folder, { recursive: true });
  return folder;
};

/** Fills a folder with the invented depot as `demoStation` has it. */
export const fillWithDemo = async (folder: string): Promise<void> =>
  cp(await loadedDemo('demo', new TestClock(demoLoadedAt).now), folder, { recursive: true });

/** A station with the invented depot, signed in as the inspector Teo Arandal. */
export const demoStation = async (options: Partial<StationOptions> = {}): Promise<TestStation> => {
  const folder = await temporaryFolder();
  await fillWithDemo(folder);
  const station = await testStation({ ...options, folder }, new TestClock(demoLoadedAt));
  await station.expectOutput('session.sign-in', { badge: demo.inspector });
  return station;
};

/** Badges and the PIN of the invented people in `demo-data/people.json`. */
export const demo = {
  administrator: 'HP10017',
  inspector: 'HP10024',
  regularUser: 'HP10031',
  expiredInspector: 'HP10048',
  attendant: 'HP10055',
  user: 'HP10062',
  pin: '271828',
} as const;
