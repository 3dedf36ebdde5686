/** A process that works at the desk of a station, and says how long each thing took and what memory it came to. */
import { join } from 'node:path';
import { instant } from '../../../src/domain/brand.ts';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { SqliteConnection } from '../../../src/ledger/sqlite/connection.ts';
import { ledgerFileName } from '../../../src/ledger/sqlite/sqlite-ledger.ts';
import { openStation, type Station } from '../../../src/station/station.ts';
import { noiseOf } from '../measurement.ts';

interface Times {
  readonly medianMs: number;
  readonly p99Ms: number;
  readonly longestMs: number;
  readonly noise: number;
}

export interface DeskDone {
  readonly card: Times;
  /** The rows of the same cards, read and parsed with nothing around. */
  readonly bare: Times;
  readonly search: Times;
  readonly searchedWords: number;
  readonly startMs: number;
  readonly memoryMb: number;
}

const rounds = 4;
const now = instant('2025-06-02T08:15:00.000Z');
/** Typed one character after the other; each of them searches. */
const typed = ['NO10037', 'quillmoor stayline', 'tessaline 9 TE1', '7M3X'];

process.on('message', async ({ folder, scanned }: { folder: string; scanned: readonly string[] }) => {
  const started = performance.now();
  const station = await openStation({ folder, now: () => now });
  if (isRefusal(station)) throw new Error(station.code);
  await ask(station, 'session.sign-in', { badge: 'badge-p-ines' });
  await ask(station, 'station.status', {});
  const startMs = performance.now() - started;
  const connection = await SqliteConnection.open(join(folder, ledgerFileName));
  const [card, bare]: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round += 1)
    for (const benchId of scanned) {
      card.push(
        await msOf(async () => {
          await ask(station, 'scan.interpret', { text: benchId });
          await ask(station, 'device.show', { benchId });
        }),
      );
      bare.push(await msOf(() => rowsOf(connection, benchId)));
    }
  const search: number[] = [];
  for (const words of typed)
    for (let length = 1; length <= words.length; length += 1)
      search.push(await msOf(() => ask(station, 'device.list', { search: words.slice(0, length) })));
  const { maxRSS } = process.resourceUsage();
  await connection.close();
  await station.close();
  const warm = scanned.length;
  process.send?.(
    {
      card: timesOf(card.slice(warm)),
      bare: timesOf(bare.slice(warm)),
      search: timesOf(search),
      searchedWords: search.length,
      startMs,
      memoryMb: maxRSS / 1000,
    } satisfies DeskDone,
    () => process.exit(0),
  );
});

const ask = async (station: Station, operation: string, input: unknown): Promise<void> => {
  const result = await station.call({ session: 'desk', operation, input, language: 'en' });
  if (!result.ok) throw new Error(`${operation}: ${result.error.sentence}`);
};

/** What a scan and a card read: the station, the device with its model sheet (twice), the people, the inspections. */
const rowsOf = async (connection: SqliteConnection, benchId: string): Promise<void> => {
  const read = async (sql: string, ...parameters: string[]): Promise<void> => {
    for (const row of await connection.all<Record<string, string>>(sql, parameters))
      for (const state of Object.values(row)) JSON.parse(state);
  };
  const station = 'select state from station';
  const device = `select device.state, model_sheet.state as sheet from device
    join model_sheet on model_sheet.model_sheet_id = device.model_sheet_id where bench_id = ?`;
  await read(station);
  await read(device, benchId);
  await read(station);
  await read(device, benchId);
  await read('select state from person order by name_key, person_id');
  await read('select state from inspection where bench_id = ? order by inspection desc', benchId);
};

const msOf = async (call: () => Promise<void>): Promise<number> => {
  const started = performance.now();
  await call();
  return performance.now() - started;
};

const timesOf = (times: readonly number[]): Times => {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return { medianMs: at(0.5), p99Ms: at(0.99), longestMs: at(1), noise: noiseOf(times) };
};
