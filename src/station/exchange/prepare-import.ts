/** Reads a fleet list and holds it against the register: everything that speaks against importing it, and nothing is recorded. */
import { createHash } from 'node:crypto';
import { dateInZone, yearOf } from '../../domain/calendar.ts';
import { type Importer, unfitToDetermine } from '../../domain/decide/import.ts';
import { plainWords, type Table } from '../../domain/fleet-import/cell.ts';
import type { ColumnChoice } from '../../domain/fleet-import/column-meaning.ts';
import type { RowFault } from '../../domain/fleet-import/fleet-row.ts';
import { type FleetPlan, type PlannedDevice, planFleet } from '../../domain/fleet-import/plan-fleet.ts';
import { type ColumnProposal, proposeColumns } from '../../domain/fleet-import/propose-columns.ts';
import { grouped } from '../../domain/grouped.ts';
import type { ModelSheet } from '../../domain/model-sheet.ts';
import type { Person } from '../../domain/person.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { readTable } from '../../intake/table/read-table.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { type BoundCode, boundCodes, contradiction } from '../bound-code.ts';
import { firstTakenCode } from '../clashes.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import type { WorkControl } from '../work-jobs.ts';
import type { ImportRequest } from './import-request.ts';
import { importRules } from './import-rules.ts';

export interface PreparedDevice extends PlannedDevice {
  readonly bound: readonly BoundCode[];
}

export interface PreparedImport extends Omit<FleetPlan, 'devices'> {
  readonly fileName: string;
  /** Of the file, in hex. */
  readonly sha256: string;
  readonly table: Table;
  readonly proposals: readonly ColumnProposal[];
  readonly columns: readonly ColumnChoice[];
  readonly devices: readonly PreparedDevice[];
}

/** Rows that are held against the register in one read, so that other reads come between. */
const rowsAtOnce = 100;

export const prepareImport = async (
  context: OperationContext,
  request: ImportRequest,
  { signal, onProgress }: WorkControl,
): Promise<PreparedImport | Refusal> => {
  const bytes = Buffer.from(request.contentBase64, 'base64');
  const table = await readTable(bytes, request.sheet);
  if (isRefusal(table)) return table;
  const rules = await importRules(context.productFolder);
  const proposals = proposeColumns(table, rules.columns, rules.values);
  const columns = request.columns ?? proposals.map(choiceOf);
  const known = await context.ledger.read(async (reader) => ({
    station: await stationIn(reader),
    knownSheets: await reader.modelSheets(),
    people: await reader.people(),
  }));
  if (isRefusal(known.station)) return known.station;
  const today = dateInZone(context.now(), known.station.timeZone);
  const plan = planFleet(table, {
    today,
    currentYear: yearOf(today),
    words: rules.values,
    columns,
    knownSheets: known.knownSheets,
    newSheetId: sheetIds(known.knownSheets.map(({ modelSheetId }) => modelSheetId)),
    personMeant: personMeant(known.people),
    withoutUnknownPeople: request.withoutUnknownPeople,
  });
  const faults = [...plan.faults];
  const { person } = context;
  const importer = person && { person, on: today };
  const devices: PreparedDevice[] = [];
  const seenCodes = new Map<string, number>();
  for (let start = 0; start < plan.devices.length; start += rowsAtOnce) {
    if (signal.aborted) return refusal('import-canceled');
    const rows = plan.devices.slice(start, start + rowsAtOnce);
    await context.ledger.read(async (reader) => {
      for (const row of rows) {
        const checked = await checkDevice(reader, row, plan, importer, yearOf(today), seenCodes);
        if (isRefusal(checked)) faults.push(faultOf(row, checked, columns));
        else devices.push(checked);
      }
    });
    onProgress({ done: start + rows.length, of: plan.devices.length });
  }
  return {
    ...plan,
    faults: faults.sort((a, b) => (a.row ?? 0) - (b.row ?? 0)),
    fileName: request.fileName,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    table,
    proposals,
    columns,
    devices,
  };
};

const choiceOf = ({ column, meaning, unit }: ColumnProposal): ColumnChoice => ({
  column,
  meaning,
  ...(unit === undefined ? {} : { unit }),
});

/** `M001`, `M002` …, after those that there are. */
const sheetIds = (taken: readonly string[]): (() => string) => {
  const known = new Set(taken);
  let last = known.size;
  return () => {
    let next = '';
    do {
      last += 1;
      next = `M${String(last).padStart(3, '0')}`;
    } while (known.has(next));
    return next;
  };
};

/** By badge, by ID, or by a name that only one person has. */
const personMeant = (people: readonly Person[]) => {
  const byName = grouped(people, ({ name }) => plainWords(name));
  return (text: string): string | undefined => {
    const exact = people.find(({ badge, personId }) => badge === text || personId === text);
    const named = byName.get(plainWords(text)) ?? [];
    return exact?.personId ?? (named.length === 1 ? named[0]?.personId : undefined);
  };
};

/** The device with its codes in their one form, or what speaks against it. */
const checkDevice = async (
  reader: LedgerReader,
  device: PlannedDevice,
  { newSheets }: FleetPlan,
  importer: Importer | undefined,
  currentYear: number,
  seenCodes: Map<string, number>,
): Promise<PreparedDevice | Refusal> => {
  const bound = boundCodes(device.codes, currentYear, 'otherCodes');
  if (isRefusal(bound)) return bound;
  for (const code of bound) {
    const contradicted = contradiction(code, device.serial, device.modelSheet, 'otherCodes');
    if (contradicted !== undefined) return contradicted;
    const { code: text } = code.otherCode;
    const earlier = seenCodes.get(text);
    if (earlier !== undefined) return refusal('import-twin', { text, row: earlier }, 'otherCodes');
    seenCodes.set(text, device.row);
  }
  const unfit = importer && unfitToDetermine(device, importer);
  return unfit ?? (await clashFault(reader, device, bound, newSheets)) ?? { ...device, bound };
};

const clashFault = async (
  reader: LedgerReader,
  { benchId, serial, modelSheet }: PlannedDevice,
  bound: readonly BoundCode[],
  newSheets: readonly ModelSheet[],
): Promise<Refusal | undefined> => {
  if (benchId !== undefined && (await reader.device(benchId)) !== undefined)
    return refusal('bench-id-taken', { benchId }, 'benchId');
  const [twin] = newSheets.includes(modelSheet)
    ? []
    : await reader.devicesBySerial(serial, modelSheet.modelSheetId);
  if (twin !== undefined) return refusal('serial-taken', { serial, benchId: twin }, 'serial');
  const taken = await firstTakenCode(reader, bound);
  return taken && refusal('code-taken', { ...taken }, 'otherCodes');
};

/** The column in which the refused field stands. */
const faultOf = (device: PlannedDevice, refused: Refusal, columns: readonly ColumnChoice[]): RowFault => {
  const column = columns.find(({ meaning }) =>
    refused.field === 'otherCodes' ? meaning.endsWith('Code') : meaning === refused.field,
  )?.column;
  return { row: device.row, ...(column === undefined ? {} : { column }), refusal: refused };
};
