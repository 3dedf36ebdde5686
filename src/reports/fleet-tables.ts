/** The register and the due list as tables. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { BenchId } from '../domain/brand.ts';
import type { DueState, Standing } from '../domain/device.ts';
import type { DueWhat } from '../domain/due/due-date.ts';
import type { DataTable, DataValue } from './data-table.ts';
import type { ReportWords } from './report-words.ts';

/** What the lists say of a device, and no more: there may be very many. */
export interface FleetRow {
  readonly benchId: BenchId;
  readonly manufacturer: string;
  readonly model: string;
  readonly serial: string;
  readonly ratedLengthM: number;
  readonly standing: Standing;
  readonly dueState: DueState;
  readonly dueOn?: string | undefined;
  readonly dueWhat?: DueWhat | undefined;
  readonly lastInspectedOn?: string | undefined;
  /** The name of its regular user. */
  readonly regularUser?: string | undefined;
}

const dateOrNothing = (date: string | undefined): DataValue => (date === undefined ? '' : { date });

const identityColumns = (words: ReportWords) => [
  { title: words.line('benchId'), share: 6.2 },
  { title: words.line('manufacturer'), share: 5.6 },
  { title: words.line('model'), share: 5 },
  { title: words.line('serial'), share: 6.2 },
];

const identityOf = (row: FleetRow): readonly DataValue[] => [
  formatBenchId(row.benchId),
  row.manufacturer,
  row.model,
  row.serial,
];

export const registerTable = (rows: readonly FleetRow[], words: ReportWords): DataTable => ({
  title: words.line('register'),
  columns: [
    ...identityColumns(words),
    { title: words.line('ratedLength'), share: 3.7 },
    { title: words.line('standing'), share: 5.8 },
    { title: words.line('lastInspected'), share: 5.2 },
    { title: words.line('nextDue'), share: 5.2 },
  ],
  rows: rows.map((row) => [
    ...identityOf(row),
    words.told(words.length(row.ratedLengthM)),
    words.tell(`standing-${row.standing}`),
    dateOrNothing(row.lastInspectedOn),
    dateOrNothing(row.dueOn),
  ]),
});

/** What is due longest comes first; what was never inspected here comes before all. */
export const dueTable = (rows: readonly FleetRow[], words: ReportWords): DataTable => ({
  title: words.line('dueList'),
  columns: [
    { title: words.line('nextDue'), share: 5.2 },
    { title: words.line('dueState'), share: 5.6 },
    ...identityColumns(words),
    { title: words.line('lastInspected'), share: 5.2 },
    { title: words.line('dueFor'), share: 6.2 },
    { title: words.line('user'), share: 5.4 },
  ],
  rows: rows
    .toSorted((a, b) => (a.dueOn ?? '').localeCompare(b.dueOn ?? ''))
    .map((row) => [
      dateOrNothing(row.dueOn),
      words.tell(`due-${row.dueState}`),
      ...identityOf(row),
      dateOrNothing(row.lastInspectedOn),
      row.dueWhat === undefined ? '' : words.tell(`due-for-${row.dueWhat}`),
      row.regularUser ?? '',
    ]),
});
