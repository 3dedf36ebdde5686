/** A plan of returns as a table: for each held device what to do, when, for how much, and why; and the new devices besides. */
import type { DataTable, DataValue } from './data-table.ts';
import type { ReportWords, Told } from './report-words.ts';

export interface ReturnPlanRow {
  readonly kind: 'repair' | 'replace' | 'scrap' | 'undecided' | 'order';
  /** As people read it; empty for a new device besides. */
  readonly id: string;
  readonly model: string;
  readonly serial: string;
  readonly lengthM: number;
  /** `2026-03`; absent where nothing is to be done in a month. */
  readonly month?: string | undefined;
  readonly pays?: number | undefined;
  readonly why: Told;
}

export const returnPlanTable = (rows: readonly ReturnPlanRow[], words: ReportWords): DataTable => ({
  title: words.line('returnPlan'),
  columns: [
    { title: words.line('benchId'), share: 5 },
    { title: words.line('model'), share: 5.5 },
    { title: words.line('serial'), share: 4.5 },
    { title: words.line('returnPlanLength'), share: 3 },
    { title: words.line('returnPlanDecision'), share: 3.5 },
    { title: words.line('returnPlanMonth'), share: 3.5 },
    { title: words.line('returnPlanPays'), share: 3.2 },
    { title: words.line('returnPlanWhy'), share: 12 },
  ],
  rows: rows.map(({ kind, id, model, serial, lengthM, month, pays, why }): DataValue[] => [
    id,
    model,
    serial,
    words.told(words.length(lengthM)),
    words.tell(`returnPlan-${kind}`),
    month === undefined ? '' : { date: month },
    pays === undefined ? '' : Math.round(pays * 100) / 100,
    why,
  ]),
});
