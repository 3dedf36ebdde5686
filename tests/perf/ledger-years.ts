/** A record as years of work leave it: devices that are inspected again and again by the shipped procedure. */
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { calendarDate, instant } from '../../src/domain/brand.ts';
import type { Decision } from '../../src/domain/decide/decision.ts';
import type { DomainEvent, Occasion } from '../../src/domain/event.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { checkpointKeyOf } from '../../src/ledger/checkpoint-key.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { deviceRegistered, inspectionPassed, inspectionStarted, setUp } from '../ledger/sample-events.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';

const ratedLengthM = 9;
/** Inspections of one device before the next device is bought: ten years of yearly ones. */
const inspectionsPerDevice = 10;
const inspectionsPerDay = 12;
const firstDay = Date.UTC(2016, 0, 4);

/** Events of one signed inspection: its start, an answer to each check, its signature. */
export const eventsPerInspection = procedure.checks.length + 2;

const deviceOf = (inspection: number) => {
  const index = Math.floor((inspection - 1) / inspectionsPerDevice);
  return benchIdFrom(Array.from({ length: 6 }, (_, place) => Math.floor(index / 32 ** place) % 32));
};

const occasionOf = (inspection: number): Occasion => {
  const at = new Date(firstDay + Math.floor(inspection / inspectionsPerDay) * 86_400_000).toISOString();
  return { at: instant(at), on: calendarDate(at.slice(0, 10)), by: 'p-ines' };
};

/** Everything of an inspection up to its signature, which is the last event. */
export const inspectionEvents = (inspection: number): readonly DomainEvent[] => {
  const id = deviceOf(inspection);
  const turn = (inspection - 1) % inspectionsPerDevice;
  return [
    ...(turn === 0
      ? [deviceRegistered(id, `SN-${inspection}`, [{ code: `NF/${inspection}`, kind: 'maker' }])]
      : []),
    inspectionStarted(inspection, id),
    ...procedure.checks.map(
      (check): DomainEvent => ({
        type: 'inspection.answered',
        inspection,
        benchId: id,
        check: check.key,
        answer: goodAnswer(check, ratedLengthM),
      }),
    ),
    inspectionPassed(inspection, id, '2030-01-04', turn + 1),
  ];
};

/** Loads about `events` events into an empty ledger; returns the number of the inspection that comes next. */
export const loadYears = async (
  ledger: Ledger,
  events: number,
  onLoaded: (events: number) => void,
): Promise<number> => {
  const { publicKey } = await checkpointKeyOf(ledger);
  const inspections = Math.max(1, Math.floor(events / (eventsPerInspection + 1 / inspectionsPerDevice)));
  /** Inspections in one transaction, so that its log does not outgrow the record. */
  const together = 2000;
  for (let first = 1; first <= inspections; first += together) {
    const last = Math.min(first + together - 1, inspections);
    const loaded = await ledger.appendAll(steps(first, last, first === 1 ? publicKey : undefined));
    if (isRefusal(loaded)) throw new Error(loaded.code);
    onLoaded((await ledger.head()).size);
  }
  return inspections + 1;
};

async function* steps(first: number, last: number, publicKey: string | undefined) {
  if (publicKey !== undefined) yield step(0, [...setUp, { type: 'station.key-made', publicKey }]);
  for (let inspection = first; inspection <= last; inspection += 1)
    yield step(inspection, inspectionEvents(inspection));
}

const step = (inspection: number, events: readonly DomainEvent[]) => ({
  occasion: occasionOf(inspection),
  decide: async (): Promise<Decision> => events,
});

/** What a signature took, in milliseconds: by the clock, and of the processors in all threads of the program. */
export interface SignatureCost {
  readonly clockMs: number;
  readonly processorMs: number;
}

/** Records one more inspection as at the bench, its signature by itself; returns what the signature took. */
export const inspectAtBench = async (ledger: Ledger, inspection: number): Promise<SignatureCost> => {
  const events = inspectionEvents(inspection);
  const before = await ledger.append(occasionOf(inspection), async () => events.slice(0, -1));
  const used = process.cpuUsage();
  const started = performance.now();
  const signed = await ledger.append(occasionOf(inspection), async () => events.slice(-1));
  const clockMs = performance.now() - started;
  const { user, system } = process.cpuUsage(used);
  if (isRefusal(before) || isRefusal(signed)) throw new Error('The inspection was refused.');
  return { clockMs, processorMs: (user + system) / 1000 };
};
