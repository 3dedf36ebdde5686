/** A register of any size, inspected year after year, recorded through the ledger as every other. */
import { benchIdFrom } from '../../../src/domain/bench-id/bench-id.ts';
import { type BenchId, calendarDate, instant } from '../../../src/domain/brand.ts';
import type { Decision } from '../../../src/domain/decide/decision.ts';
import type { DomainEvent } from '../../../src/domain/event.ts';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { checkpointKeyOf } from '../../../src/ledger/checkpoint-key.ts';
import { openSqliteLedger } from '../../../src/ledger/sqlite/sqlite-ledger.ts';
import {
  deviceRegistered,
  inspectionPassed,
  inspectionStarted,
  modelSheet,
  modelSheetRecorded,
  setUp,
} from '../../ledger/sample-events.ts';
import { seededRandom } from '../../support/seeded-random.ts';
import { goodAnswer, procedure } from '../../support/shipped-rules.ts';

/** Devices whose inspections have all their answers, and which are scanned. */
const scannedDevices = 500;
const makers = ['Norvane', 'Quillmoor', 'Tessaline', 'Harstead', 'Ostrel'];
const models = ['Halt 6', 'Halt 9', 'Stayline 15', 'Guyline 20', 'Kestrel 30'];
const firstYear = 2016;
/** Devices in one transaction, so that its log does not outgrow the record, and in one decision, which is projected as one. */
const together = 2000;
const decidedTogether = 100;

/** Returns the bench IDs to scan, from all over the register. */
export const loadRegister = async (
  folder: string,
  devices: number,
  inspectionsPerDevice: number,
): Promise<readonly BenchId[]> => {
  const ledger = await openSqliteLedger(folder);
  if (isRefusal(ledger)) throw new Error(ledger.code);
  const every = Math.max(1, Math.floor(devices / scannedDevices));
  const isScanned = (index: number): boolean => index % every === 0;
  const append = async (year: number, from: number, eventsOf: (index: number) => readonly DomainEvent[]) => {
    for (let first = from; first < devices; first += together) {
      const last = Math.min(first + together, devices);
      const occasion = {
        at: instant(`${year}-03-02T08:15:00.000Z`),
        on: calendarDate(`${year}-03-02`),
        by: 'p-ines',
      };
      const steps = async function* () {
        for (let next = first; next < last; next += decidedTogether) {
          const indexes = Array.from(
            { length: Math.min(decidedTogether, last - next) },
            (_, at) => next + at,
          );
          yield {
            occasion,
            decide: async (): Promise<Decision> => indexes.flatMap((index) => eventsOf(index)),
          };
        }
      };
      const recorded = await ledger.appendAll(steps());
      if (isRefusal(recorded)) throw new Error(recorded.code);
      process.stderr.write(`\r\u001b[K${year}: ${last} of ${devices} devices`);
    }
  };
  const { publicKey } = await checkpointKeyOf(ledger);
  const sheets = makers.flatMap((manufacturer) =>
    models.map((model) =>
      modelSheetRecorded({ modelSheetId: `${manufacturer}-${model}`, manufacturer, model }),
    ),
  );
  const begun: readonly DomainEvent[] = [...setUp, ...sheets, { type: 'station.key-made', publicKey }];
  const random = seededRandom(1);
  const registered = (index: number): DomainEvent => {
    const [maker, model] = [random.pick(makers), random.pick(models)];
    const serial = `${maker.slice(0, 2).toUpperCase()}${10_000_000 + index * 37}`;
    return deviceRegistered(deviceAt(index), serial, [], `${maker}-${model}`);
  };
  await append(firstYear, 0, (index) => (index === 0 ? [...begun, registered(0)] : [registered(index)]));
  for (let turn = 0; turn < inspectionsPerDevice; turn += 1)
    await append(firstYear + turn, 0, (index) =>
      inspected(index, turn * devices + index + 1, turn, isScanned(index)),
    );
  process.stderr.write('\n');
  await ledger.close();
  return Array.from({ length: devices }, (_, index) => index)
    .filter(isScanned)
    .map(deviceAt);
};

const deviceAt = (index: number): BenchId =>
  benchIdFrom(Array.from({ length: 6 }, (_, place) => Math.floor((index * 7919) / 32 ** place) % 32));

const inspected = (
  index: number,
  inspection: number,
  turn: number,
  isWhole: boolean,
): readonly DomainEvent[] => {
  const benchId = deviceAt(index);
  return [
    inspectionStarted(inspection, benchId),
    ...(isWhole
      ? procedure.checks.map(
          (check): DomainEvent => ({
            type: 'inspection.answered',
            inspection,
            benchId,
            check: check.key,
            answer: goodAnswer(check, modelSheet.ratedLengthM),
          }),
        )
      : []),
    inspectionPassed(inspection, benchId, `${firstYear + turn + 1}-03-02`, turn + 1),
  ];
};
