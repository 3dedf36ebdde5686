/** Records a prepared fleet list: all of it in one transaction that can be canceled until it is committed, or nothing. */
import type { BenchId } from '../../domain/brand.ts';
import { decideImportDevice, type Importer, type ImportSource } from '../../domain/decide/import.ts';
import { decideRecordModelSheet } from '../../domain/decide/model-sheet.ts';
import type { DomainEvent, Occasion } from '../../domain/event.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { clashesOf } from '../clashes.ts';
import { freeBenchId } from '../free-bench-id.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { holdingRecalled } from '../recall/hold-recalled.ts';
import type { WorkControl } from '../work-jobs.ts';
import { importRules } from './import-rules.ts';
import type { PreparedDevice, PreparedImport } from './prepare-import.ts';

export interface ImportedFleet {
  readonly fileName: string;
  readonly sha256: string;
  readonly devices: number;
  readonly modelSheets: number;
  readonly inspections: number;
  readonly removed: number;
  readonly events: number;
}

/** Devices that are decided and recorded at a time: between them the import can be canceled. */
const devicesAtOnce = 100;

interface Step {
  readonly occasion: Occasion;
  readonly decide: (reader: LedgerReader) => Promise<readonly DomainEvent[] | Refusal>;
}

/** Refuses where a question is open or any row has a fault; each row is held against the register once more as it is recorded. */
export const recordImport = async (
  context: OperationContext,
  prepared: PreparedImport,
  { signal, onProgress }: WorkControl,
): Promise<ImportedFleet | Refusal> => {
  const { fileName, sha256, devices, newSheets } = prepared;
  const fault = faultOf(prepared);
  if (fault !== undefined) return fault;
  const { values } = await importRules(context.productFolder);
  const { person } = context;
  if (person === undefined) return refusal('sign-in-needed');
  const station = await context.ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const occasion = context.occasion(station);
  const source: ImportSource = { fileName, sha256, removalReason: values.removalReason };
  const importer = { person, on: occasion.on };
  const counts = {
    devices: devices.length,
    inspections: devices.filter(({ inspection }) => inspection !== undefined).length,
  };
  /** Declared removed by the list, or meant by a manufacturer's notice. */
  const held = new Set<BenchId>();
  const unlessCanceled =
    (decide: Step['decide']): Step['decide'] =>
    async (reader) =>
      signal.aborted ? refusal('import-canceled') : decide(reader);

  async function* steps(): AsyncIterable<Step> {
    const imported: DomainEvent = { type: 'fleet.imported', fileName, sha256, ...counts };
    yield { occasion, decide: unlessCanceled(async () => [imported]) };
    for (const sheet of newSheets) {
      const decide = async (reader: LedgerReader) =>
        decideRecordModelSheet(sheet, await reader.modelSheets());
      yield { occasion, decide: unlessCanceled(decide) };
    }
    for (let start = 0; start < devices.length; start += devicesAtOnce) {
      const rows = devices.slice(start, start + devicesAtOnce);
      yield {
        occasion,
        decide: unlessCanceled(async (reader) => {
          const decided = await eventsOf(reader, rows, source, importer, context.randomBytes);
          const events = await holdingRecalled(reader, decided, occasion, context.rules);
          if (isRefusal(events)) return events;
          for (const event of events) if (event.type === 'device.removed') held.add(event.benchId);
          return events;
        }),
      };
      onProgress({ done: start + rows.length, of: devices.length });
    }
    yield { occasion, decide: unlessCanceled(async () => []) };
  }

  const events = await context.ledger.appendAll(steps());
  if (isRefusal(events)) return events;
  return {
    fileName,
    sha256,
    ...counts,
    modelSheets: newSheets.length,
    removed: held.size,
    events,
  };
};

const faultOf = ({ questions, faults }: PreparedImport): Refusal | undefined => {
  const [first] = faults;
  if (first !== undefined)
    return first.row === undefined
      ? first.refusal
      : refusal('import-has-faults', { count: faults.length, row: first.row });
  return questions.length === 0
    ? undefined
    : refusal('import-questions-open', {
        questions: [...new Set(questions.map(({ kind }) => kind))].join(', '),
      });
};

/** A bench ID that the list gives is kept; the others are new, each unlike those of the rows before it. */
const eventsOf = async (
  reader: LedgerReader,
  rows: readonly PreparedDevice[],
  source: ImportSource,
  importer: Importer,
  randomBytes: OperationContext['randomBytes'],
): Promise<readonly DomainEvent[] | Refusal> => {
  const events: DomainEvent[] = [];
  const given = new Set<string>(rows.flatMap(({ benchId }) => benchId ?? []));
  for (const row of rows) {
    let benchId = row.benchId ?? (await freeBenchId(reader, randomBytes));
    while (row.benchId === undefined && given.has(benchId)) benchId = await freeBenchId(reader, randomBytes);
    given.add(benchId);
    const { serial, modelSheet, bound } = row;
    const clashes = await clashesOf(
      reader,
      benchId,
      { serial, modelSheetId: modelSheet.modelSheetId },
      bound,
    );
    const codes = bound.map(({ otherCode }) => otherCode);
    const decided = decideImportDevice(benchId, row, codes, source, clashes, importer);
    if (isRefusal(decided)) return decided;
    events.push(...decided);
  }
  return events;
};
