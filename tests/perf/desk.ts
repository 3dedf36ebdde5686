/**
 * The desk over a large register: 100,000 devices, with ten inspections each where the run is a long one and one where not. From the scan of a device to its card, the search
 * of the register as somebody types, the start of the station, and its memory. `--events N` takes as many devices as
 * have about so many events, those with all their answers left aside.
 *
 * Every inspection is recorded by its start and its signature; those of the devices that are scanned have all their answers.
 */
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { DeskDone } from './desk/desk-work.ts';
import type { Benchmark } from './measurement.ts';
import { registerFolder } from './register-folder.ts';

const devices = 100_000;
const inspectionsPerDevice = 10;
/** Of a registration and its share of inspections. */
const eventsPerDevice = 1 + 2 * inspectionsPerDevice;

export const peer = 'SQLite alone reading and parsing the same rows';

export const benchmark: Benchmark = async ({ long, events = devices * eventsPerDevice }) => {
  const size = Math.min(devices, Math.max(1000, Math.floor(events / eventsPerDevice)));
  const inspections = long ? inspectionsPerDevice : 1;
  const { folder, scanned } = await registerFolder(size, inspections);
  const { card, bare, search, searchedWords, startMs, memoryMb } = await workAtDesk(folder, scanned);
  const over = `${size} devices, ${size * inspections} inspections`;
  return [
    {
      name: `${over}: scan to device card, median`,
      value: card.medianMs,
      unit: 'ms',
      noise: card.noise,
    },
    { name: `${over}: scan to device card, 99th percentile`, value: card.p99Ms, unit: 'ms', budget: 10 },
    {
      name: `${over}: the same rows by SQLite alone, median`,
      value: bare.medianMs,
      unit: 'ms',
      noise: bare.noise,
    },
    {
      name: `${over}: scan to device card beside SQLite alone`,
      value: card.medianMs / bare.medianMs,
      unit: '×',
      budget: 3,
      noise: card.noise + bare.noise,
    },
    {
      name: `${over}: register searched as typed, median`,
      value: search.medianMs,
      unit: 'ms',
      noise: search.noise,
    },
    {
      name: `${over}: register searched as typed, longest of ${searchedWords}`,
      value: search.longestMs,
      unit: 'ms',
      budget: 50,
    },
    { name: `${over}: station opened`, value: startMs / 1000, unit: 's', budget: 2 },
    { name: `${over}: most memory of the station`, value: memoryMb, unit: 'MB', budget: 250 },
  ];
};

/** In a process of its own, so that the memory is that of a station alone. */
const workAtDesk = (folder: string, scanned: readonly string[]): Promise<DeskDone> =>
  new Promise((resolve, reject) => {
    const worker = fork(fileURLToPath(new URL('./desk/desk-work.ts', import.meta.url)));
    worker.on('message', (done: DeskDone) => resolve(done));
    worker.on('error', reject);
    worker.on('exit', (code) => reject(new Error(`The work at the desk ended with ${code}.`)));
    worker.send({ folder, scanned });
  });
