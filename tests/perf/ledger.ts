/**
 * The record at 10³, 10⁴, 10⁵ and 10⁶ events: what a signature costs, how long verification takes beside SHA-256 of
 * the same events, and how many bytes a signed inspection takes. The longest only with `--long`; `--events N` leaves out the
 * longer ones.
 */
import { createHash } from 'node:crypto';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { Ledger, VerifyOptions } from '../../src/ledger/ledger.ts';
import { ledgerFileName, openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { eventsPerInspection, inspectAtBench, loadYears, type SignatureCost } from './ledger-years.ts';
import { type Benchmark, type Figure, noiseOf } from './measurement.ts';

const sizes = [1_000, 10_000, 100_000, 1_000_000];
/** The longest record of a run that is kept short. */
const shortMost = 100_000;
/** Inspections that are signed in turn at each record, so that what else the machine does falls on all of them. */
const signatures = 200;
/** Events whose bytes are held in memory for one timed run of hashing. */
const hashedTogether = 5_000;

interface Years {
  readonly events: number;
  readonly folder: string;
  readonly ledger: Ledger;
  next: number;
  readonly signed: SignatureCost[];
}

export const peer = 'SHA-256 of the same events (node:crypto), and the record of 1,000 events';

export const benchmark: Benchmark = async ({
  long,
  events: most = long ? Number.POSITIVE_INFINITY : shortMost,
}) => {
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-ledger-'));
  const records: Years[] = [];
  try {
    for (const events of sizes.filter((size) => size <= most)) records.push(await openYears(folder, events));
    for (let round = 0; round < signatures; round += 1) {
      for (const record of records) {
        record.signed.push(await inspectAtBench(record.ledger, record.next));
        record.next += 1;
      }
    }
    const figures: Figure[] = [...signatureFigures(records)];
    for (const record of records)
      figures.push(...(await verificationFigures(record)), await sizeFigure(record));
    return figures;
  } finally {
    for (const { ledger } of records) await ledger.close();
    await rm(folder, { recursive: true, force: true });
  }
};

const openYears = async (parent: string, events: number): Promise<Years> => {
  const folder = join(parent, String(events));
  const ledger = await openSqliteLedger(folder);
  if (isRefusal(ledger)) throw new Error(ledger.code);
  const started = performance.now();
  const next = await loadYears(ledger, events, (loaded) => tell(`loading ${loaded} of ${events}`));
  tell(`${events} events loaded in ${((performance.now() - started) / 1000).toFixed(1)} s\n`);
  return { events, folder, ledger, next, signed: [] };
};

const tell = (line: string): void => void process.stderr.write(`\r\u001b[K${line}`);

const named = (events: number): string => `10^${Math.log10(events)} events`;

/** The limit is on the processor time: how long the clock ran depends on the disk and on what else the machine does. */
const signatureFigures = (records: readonly Years[]): readonly Figure[] => {
  const median = ({ signed }: Years, cost: keyof SignatureCost) => medianOf(signed.map((each) => each[cost]));
  const noise = ({ signed }: Years, cost: keyof SignatureCost) => noiseOf(signed.map((each) => each[cost]));
  const [shortest] = records;
  if (shortest === undefined) return [];
  return records.flatMap((record): Figure[] => {
    const name = `${named(record.events)}: a signature`;
    const beside = (cost: keyof SignatureCost) => median(record, cost) / median(shortest, cost);
    const figures: Figure[] = [
      {
        name: `${name}, processor time, median`,
        value: median(record, 'processorMs'),
        unit: 'ms',
        noise: noise(record, 'processorMs'),
      },
      {
        name: `${name}, by the clock, median`,
        value: median(record, 'clockMs'),
        unit: 'ms',
        noise: noise(record, 'clockMs'),
      },
    ];
    if (record === shortest) return figures;
    const than = `beside that at ${named(shortest.events)}`;
    return [
      ...figures,
      { name: `${name}, processor time, ${than}`, value: beside('processorMs'), unit: '×', budget: 1.2 },
      { name: `${name}, by the clock, ${than}`, value: beside('clockMs'), unit: '×' },
    ];
  });
};

/** The record itself first, in turn with SHA-256, then once more with everything that is derived from it. */
const verificationFigures = async ({ events, ledger }: Years): Promise<readonly Figure[]> => {
  const hashed = [await sha256Ms(ledger)];
  const verified: number[] = [];
  for (let turn = 0; turn < turnsOf(events); turn += 1) {
    verified.push(await verifyMs(ledger, { extent: 'events' }));
    hashed.push(await sha256Ms(ledger));
  }
  const raw = medianOf(hashed);
  const itself = medianOf(verified);
  const whole = await verifyMs(ledger, {});
  return [
    {
      name: `${named(events)}: SHA-256 of its events, median`,
      value: raw,
      unit: 'ms',
      noise: noiseOf(hashed),
    },
    {
      name: `${named(events)}: events, hashes and checkpoints verified, median`,
      value: itself,
      unit: 'ms',
      noise: noiseOf(verified),
    },
    {
      name: `${named(events)}: their speed beside SHA-256`,
      value: raw / itself,
      unit: '×',
      noise: noiseOf(hashed) + noiseOf(verified),
      ...atLeast(events),
    },
    { name: `${named(events)}: verified with everything derived`, value: whole, unit: 'ms' },
    { name: `${named(events)}: its speed beside SHA-256`, value: raw / whole, unit: '×' },
  ];
};

/** What takes a fraction of a second is timed more often. */
const turnsOf = (events: number): number => (events < 1_000_000 ? 9 : 3);

/** A short record is verified in the time that it takes to open it. */
const atLeast = (events: number): Pick<Figure, 'atLeast'> => (events >= 100_000 ? { atLeast: 0.6 } : {});

const verifyMs = async (ledger: Ledger, options: VerifyOptions): Promise<number> => {
  const started = performance.now();
  const { sound } = await ledger.verify({
    ...options,
    onProgress: ({ done, of }) => tell(`verifying ${done} of ${of}`),
  });
  const took = performance.now() - started;
  tell('');
  if (!sound) throw new Error('The record is not sound.');
  return took;
};

/** `createHash` of each event by itself; reading it is not in the time. */
const sha256Ms = async (ledger: Ledger): Promise<number> => {
  let took = 0;
  let waiting: Buffer[] = [];
  const hashAll = (): void => {
    const started = performance.now();
    for (const bytes of waiting) createHash('sha256').update(bytes).digest();
    took += performance.now() - started;
    waiting = [];
  };
  for await (const line of ledger.export()) {
    waiting.push(Buffer.from(line));
    if (waiting.length === hashedTogether) hashAll();
  }
  hashAll();
  return took;
};

/** The file holds everything: events, hashes, subtrees, checkpoints, projections and indexes. */
const sizeFigure = async ({ events, folder, ledger }: Years): Promise<Figure> => {
  const { size } = await ledger.head();
  const { size: bytes } = await stat(join(folder, ledgerFileName));
  const value = (bytes / size) * eventsPerInspection;
  return {
    name: `${named(events)}: a signed inspection of ${eventsPerInspection} events in the file`,
    value: value / 1000,
    unit: 'kB',
  };
};

const medianOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
