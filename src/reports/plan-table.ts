/** The plan of the bench as a table: what to fetch, by place, with a box to tick; and the notices as one. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { BenchId } from '../domain/brand.ts';
import type { DataTable, DataValue } from './data-table.ts';
import type { ReportWords, Told } from './report-words.ts';

export interface PlanRow {
  readonly benchId: BenchId;
  readonly manufacturer: string;
  readonly model: string;
  readonly serial: string;
  readonly on?: string | undefined;
  readonly dueOn?: string | undefined;
  readonly kind: 'overdue' | 'due' | 'never inspected';
  readonly dueWhat?: 'documented inspection' | 'revalidation' | 'service life' | undefined;
  readonly callIn: boolean;
  /** The name of who has it. */
  readonly holder?: string | undefined;
  readonly outUntil?: string | undefined;
  /** The code of its place in store. */
  readonly place?: string | undefined;
  /** The name of its regular user. */
  readonly regularUser?: string | undefined;
}

/** Where to look for the device: who has it, and whether it must be called in; else its place in store, or whose it usually is. */
export const whereabouts = (
  { holder, outUntil, callIn, regularUser, place }: PlanRow,
  words: ReportWords,
): Told => {
  if (holder === undefined && place !== undefined) return words.tell('planAtPlace', { place });
  if (holder === undefined)
    return words.tell(regularUser === undefined ? 'planInStore' : 'planInStoreOf', {
      user: regularUser ?? '',
    });
  const until = outUntil === undefined ? '' : words.dateLine(outUntil);
  if (callIn) return words.tell('planCallIn', { holder });
  return outUntil === undefined
    ? words.tell('planOut', { holder })
    : words.tell('planOutUntil', { holder, until });
};

const dateOrNothing = (date: string | undefined): DataValue => (date === undefined ? '' : { date });

const dueOf = ({ dueOn, kind, dueWhat }: PlanRow, words: ReportWords): DataValue => {
  if (dueOn === undefined) return words.tell('due-never inspected');
  const date = words.date(dueOn);
  if (kind === 'overdue') return words.tell('planOverdue', { date });
  return dueWhat === undefined || dueWhat === 'documented inspection'
    ? { date: dueOn }
    : words.tell('planDueFor', { date, what: words.message(`dueWhat-${dueWhat}`) });
};

/** What is out comes first, by who has it, for it takes the longest to have; then what is in store. */
const byPlace = (one: PlanRow, other: PlanRow): number =>
  Number(one.holder === undefined) - Number(other.holder === undefined) ||
  (one.holder ?? '').localeCompare(other.holder ?? '') ||
  (one.place ?? '').localeCompare(other.place ?? '', undefined, { numeric: true }) ||
  (one.on ?? '').localeCompare(other.on ?? '') ||
  one.manufacturer.localeCompare(other.manufacturer) ||
  one.model.localeCompare(other.model) ||
  one.serial.localeCompare(other.serial);

export const pickListTable = (rows: readonly PlanRow[], words: ReportWords): DataTable => ({
  title: words.line('pickList'),
  columns: [
    { title: words.line('planFetched'), share: 2.6 },
    { title: words.line('planWhere'), share: 7.2 },
    { title: words.line('planDay'), share: 4.6 },
    { title: words.line('benchId'), share: 6.4 },
    { title: words.line('serial'), share: 5.8 },
    { title: words.line('manufacturer'), share: 5.2 },
    { title: words.line('model'), share: 5.2 },
    { title: words.line('nextDue'), share: 5.4 },
  ],
  rows: rows
    .toSorted(byPlace)
    .map((row) => [
      '[    ]',
      whereabouts(row, words),
      dateOrNothing(row.on),
      formatBenchId(row.benchId),
      row.serial,
      row.manufacturer,
      row.model,
      dueOf(row, words),
    ]),
});

export interface TrainingRow {
  readonly name: string;
  readonly on: string;
  readonly notice: 'expired' | 'ends soon';
}

/** Devices out in the field that come due, then people whose training runs out. */
export const noticesTable = (
  devices: readonly (PlanRow & { readonly why: 'overdue' | 'call in' | 'due soon' })[],
  training: readonly TrainingRow[],
  words: ReportWords,
): DataTable => ({
  title: words.line('notices'),
  columns: [
    { title: words.line('noticeWhy'), share: 8 },
    { title: words.line('noticeWho'), share: 6 },
    { title: words.line('noticeUntil'), share: 5 },
    { title: words.line('device'), share: 9 },
    { title: words.line('planBack'), share: 5 },
  ],
  rows: [
    ...devices.map((row) => [
      words.tell(`notice-${row.why}`),
      row.holder ?? '',
      dateOrNothing(row.dueOn),
      `${formatBenchId(row.benchId)} ${row.manufacturer} ${row.model}, ${row.serial}`,
      dateOrNothing(row.outUntil),
    ]),
    ...training.map(({ name, on, notice }) => [
      words.tell(`notice-training ${notice}`),
      name,
      { date: on },
      '',
      '',
    ]),
  ],
});
