/** The register and the due list as tables. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { Device, DueState } from '../domain/device.ts';
import type { ModelSheet } from '../domain/model-sheet.ts';
import type { DataTable, DataValue } from './data-table.ts';
import type { ReportWords } from './report-words.ts';

export interface FleetRow {
  readonly device: Device;
  readonly modelSheet: ModelSheet;
  readonly dueState: DueState;
  /** The name of its regular user. */
  readonly regularUser?: string | undefined;
}

const dateOrNothing = (date: string | undefined): DataValue => (date === undefined ? '' : { date });

const identityColumns = (words: ReportWords) => [
  { title: words.line('benchId'), share: 5.2 },
  { title: words.line('manufacturer'), share: 4.5 },
  { title: words.line('model'), share: 5 },
  { title: words.line('serial'), share: 5.5 },
];

const identityOf = ({ device, modelSheet }: FleetRow): readonly DataValue[] => [
  formatBenchId(device.benchId),
  modelSheet.manufacturer,
  modelSheet.model,
  device.serial,
];

export const registerTable = (rows: readonly FleetRow[], words: ReportWords): DataTable => ({
  title: words.line('register'),
  columns: [
    ...identityColumns(words),
    { title: words.line('ratedLength'), share: 3.6 },
    { title: words.line('standing'), share: 5 },
    { title: words.line('lastInspected'), share: 4.6 },
    { title: words.line('nextDue'), share: 4.6 },
  ],
  rows: rows.map((row) => [
    ...identityOf(row),
    words.told(words.length(row.modelSheet.ratedLengthM)),
    words.tell(`standing-${row.device.standing}`),
    dateOrNothing(row.device.lastInspection?.on),
    dateOrNothing(row.device.dueOn),
  ]),
});

/** What is due longest comes first; what was never inspected here comes before all. */
export const dueTable = (rows: readonly FleetRow[], words: ReportWords): DataTable => ({
  title: words.line('dueList'),
  columns: [
    { title: words.line('nextDue'), share: 4.6 },
    { title: words.line('dueState'), share: 5 },
    ...identityColumns(words),
    { title: words.line('lastInspected'), share: 4.6 },
    { title: words.line('user'), share: 5 },
  ],
  rows: rows
    .toSorted((a, b) => (a.device.dueOn ?? '').localeCompare(b.device.dueOn ?? ''))
    .map((row) => [
      dateOrNothing(row.device.dueOn),
      words.tell(`due-${row.dueState}`),
      ...identityOf(row),
      dateOrNothing(row.device.lastInspection?.on),
      row.regularUser ?? '',
    ]),
});
