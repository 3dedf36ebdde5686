/**
 * A stricter program, and a laxer one after it, over 100,000 devices in service: how long the adoption takes until it is
 * acknowledged, how long the event loop is held at a stretch meanwhile, and what a reader of the register waits.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { calendarDate } from '../../src/domain/brand.ts';
import type { DomainEvent } from '../../src/domain/event.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { benchId, inspectedDevice, occasion, setUp } from '../ledger/sample-events.ts';
import { program } from '../support/shipped-rules.ts';
import type { Benchmark } from './measurement.ts';

const devices = 100_000;
const atOnce = 2_000;

export const peer = 'none: by the clock alone';

export const benchmark: Benchmark = async () => {
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-program-'));
  const ledger = await openSqliteLedger(folder);
  if (isRefusal(ledger)) throw new Error(ledger.code);
  try {
    await append(ledger, setUp);
    for (let first = 0; first < devices; first += atOnce) {
      const numbers = Array.from({ length: atOnce }, (_, index) => first + index);
      await append(
        ledger,
        numbers.flatMap((number) => inspectedDevice(number)),
      );
    }
    const stricter = await adoption(ledger, 1);
    const laxer = await adoption(ledger, 12);
    return [
      { name: 'stricter program adopted, every date moves', value: stricter.tookMs, unit: 'ms' },
      { name: 'longest time that the event loop was held', value: stricter.heldMs, unit: 'ms', budget: 250 },
      { name: 'longest look-up of a device meanwhile', value: stricter.readMs, unit: 'ms' },
      { name: 'laxer program adopted, every date moves back', value: laxer.tookMs, unit: 'ms' },
    ];
  } finally {
    await ledger.close();
    await rm(folder, { recursive: true, force: true });
  }
};

const append = async (ledger: Ledger, events: readonly DomainEvent[]): Promise<void> => {
  const recorded = await ledger.append(occasion, async () => events);
  if (isRefusal(recorded)) throw new Error(recorded.code);
};

const adoption = async (ledger: Ledger, months: number) => {
  const { source } = program.inspectionInterval;
  const adopted: DomainEvent = {
    type: 'program.adopted',
    program: { ...program, key: 'depot', version: months, inspectionInterval: { months, source } },
    effectiveFrom: calendarDate('2026-03-02'),
  };
  const delay = monitorEventLoopDelay({ resolution: 5 });
  delay.enable();
  const started = performance.now();
  const work = { isDone: false };
  const done = append(ledger, [adopted]).finally(() => {
    work.isDone = true;
  });
  let readMs = 0;
  while (!work.isDone) {
    const asked = performance.now();
    await ledger.read((reader) => reader.device(benchId(Math.floor(asked) % devices)));
    readMs = Math.max(readMs, performance.now() - asked);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  await done;
  delay.disable();
  return { tookMs: performance.now() - started, heldMs: delay.max / 1e6, readMs };
};
