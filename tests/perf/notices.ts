/**
 * A manufacturer's notice with twenty ranges over 10,000 devices of one model: how long the register takes to be held
 * against it where no range names a device and where every one is named, and how long until all of these are held.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { decideNotice } from '../../src/domain/decide/notice.ts';
import type { Person } from '../../src/domain/person.ts';
import { type NoticeText, noticeTextSchema } from '../../src/domain/recall/notice.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { recalledBy } from '../../src/station/recall/recalled-devices.ts';
import type { Rules } from '../../src/station/rules.ts';
import { benchId, deviceRegistered, modelSheet, occasion, setUp } from '../ledger/sample-events.ts';
import type { Benchmark } from './measurement.ts';

const devices = 10_000;
const atOnce = 1_000;
const ranges = 20;

/** Ranges of as many serial numbers each as make up the fleet, from this one on. */
const noticeFrom = (first: number): NoticeText =>
  noticeTextSchema.parse({
    manufacturer: modelSheet.manufacturer,
    reference: `SN ${first}`,
    issuedOn: '2026-03-01',
    instruction: { en: 'Return it.' },
    affected: [
      {
        models: [modelSheet.model],
        serials: Array.from({ length: ranges }, (_, index) => {
          const from = first + (index * devices) / ranges;
          return `K9-24-${from}…K9-24-${from + devices / ranges - 1}`;
        }),
      },
    ],
  });

/** No inspection is open, so the rules of the procedures are never asked for. */
const noRules = {} as Rules;
const quiet = { signal: new AbortController().signal, onProgress: () => undefined };
const administrator: Person = {
  personId: 'p-ines',
  name: 'Inês Caldeira',
  badge: 'badge-p-ines',
  roles: ['administrator'],
};

export const peer = 'none: by the clock alone';

export const benchmark: Benchmark = async () => {
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-notices-'));
  const ledger = await openSqliteLedger(folder);
  if (isRefusal(ledger)) throw new Error(ledger.code);
  try {
    await ledger.append(occasion, async () => setUp);
    for (let first = 0; first < devices; first += atOnce)
      await ledger.append(occasion, async () =>
        Array.from({ length: atOnce }, (_, index) =>
          deviceRegistered(benchId(first + index), `K9-24-${10_000 + first + index}`),
        ),
      );
    const elsewhere = await matched(ledger, noticeFrom(50_000));
    const named = await matched(ledger, noticeFrom(10_000));
    const started = performance.now();
    const recorded = await ledger.append(occasion, async (reader) => {
      const text = noticeFrom(10_000);
      const recalled = await recalledBy(reader, text, noRules, quiet);
      return isRefusal(recalled)
        ? recalled
        : decideNotice({ notice: 1, text }, [], recalled, administrator, occasion);
    });
    if (isRefusal(recorded) || recorded.length !== devices + 1) throw new Error('Not every device is held.');
    const held = (performance.now() - started) / devices;
    return [
      {
        name: 'a device held against 20 ranges that do not name it',
        value: elsewhere,
        unit: 'ms',
        budget: 0.5,
      },
      {
        name: 'a device held against 20 ranges of which one names it',
        value: named,
        unit: 'ms',
        budget: 0.5,
      },
      { name: 'the same, and held', value: held, unit: 'ms', budget: 2 },
    ];
  } finally {
    await ledger.close();
    await rm(folder, { recursive: true, force: true });
  }
};

/** Milliseconds a device, reading it included. */
const matched = async (ledger: Ledger, text: NoticeText): Promise<number> => {
  const started = performance.now();
  const recalled = await ledger.read((reader) => recalledBy(reader, text, noRules, quiet));
  if (isRefusal(recalled)) throw new Error(recalled.code);
  return (performance.now() - started) / devices;
};
