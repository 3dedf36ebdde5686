/** A station on the loopback host in a process of its own, whose hours pass quickly, and which says what it holds. */
import { readdir, readlink, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { instant } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openDoorway } from '../../src/host/doorway.ts';
import { builtPage } from '../../src/host/hosted-station.ts';
import { startWebHost } from '../../src/host/web-host.ts';
import { ledgerFileName } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { openStation } from '../../src/station/station.ts';

export interface SoakOrder {
  readonly folder: string;
  readonly startsAt: string;
  /** Seconds of the station to one of the clock on the wall. */
  readonly speed: number;
}

export type SoakQuestion = 'address' | 'held' | 'end';

/** What the process has in its hands after everything that can be collected was. */
export interface Held {
  readonly heapMb: number;
  readonly residentMb: number;
  /** Open files and pipes; without sockets, which the browser opens and closes as it likes. */
  readonly files: number;
  readonly sockets: number;
  /** Of the files, those of the record: the connections to the database. */
  readonly connections: number;
  readonly timers: number;
  readonly listeners: number;
  /** Of SQLite's log beside the record. */
  readonly logMb: number;
}

export type SoakAnswer =
  | { readonly ready: true }
  | { readonly address: string }
  | { readonly held: Held }
  | { readonly faults: readonly string[] };

const tell = (answer: SoakAnswer): void => void process.send?.(answer);

const open = async ({ folder, startsAt, speed }: SoakOrder): Promise<void> => {
  const begun = Date.now();
  const faults: string[] = [];
  const files = await builtPage();
  if (files === undefined) throw new Error('The page could not be built.');
  const station = await openStation({
    folder,
    now: () => instant(new Date(Date.parse(startsAt) + (Date.now() - begun) * speed).toISOString()),
    onFault: (error, operation) => void faults.push(`${operation}: ${String(error)}`),
  });
  if (isRefusal(station)) throw new Error(`The station did not open: ${station.code}`);
  const door = await openDoorway(0);
  const host = startWebHost({ station, files, door });
  process.on('message', async (question: SoakQuestion) => {
    switch (question) {
      case 'address':
        return tell({ address: door.newAddress() });
      case 'held':
        await station.keep();
        return tell({ held: await heldNow(folder) });
      case 'end':
        await host.close();
        await station.close();
        process.send?.({ faults } satisfies SoakAnswer, () => process.disconnect());
    }
  });
  tell({ ready: true });
};

const heldNow = async (folder: string): Promise<Held> => {
  for (let times = 0; times < 2; times += 1) {
    (globalThis as { readonly gc?: () => void }).gc?.();
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  const record = join(folder, ledgerFileName);
  const links = await Promise.all(
    (await readdir('/proc/self/fd')).map((name) => readlink(`/proc/self/fd/${name}`).catch(() => 'gone')),
  );
  const sockets = links.filter((link) => link.startsWith('socket:')).length;
  const { heapUsed, rss } = process.memoryUsage();
  return {
    heapMb: heapUsed / 1e6,
    residentMb: rss / 1e6,
    files: links.filter((link) => link !== 'gone').length - sockets,
    sockets,
    connections: links.filter((link) => link === record).length,
    timers: process.getActiveResourcesInfo().filter((name) => name === 'Timeout').length,
    listeners: process.eventNames().reduce((sum, name) => sum + process.listenerCount(name), 0),
    logMb:
      (await stat(`${record}-wal`).then(
        ({ size }) => size,
        () => 0,
      )) / 1e6,
  };
};

process.once('message', (order: SoakOrder) => {
  open(order).catch((error: unknown) => {
    console.error(error);
    process.exit(1);
  });
});
