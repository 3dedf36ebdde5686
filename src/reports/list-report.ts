/** A list of devices as a report: what was asked for, how many there are, and the table. */
import { type DataTable, tableStrip } from './data-table.ts';
import { heading, prose, whole } from './prose.ts';
import type { Report } from './render-report.ts';
import type { ReportWords, Told } from './report-words.ts';
import { textStyles } from './type-sizes.ts';

export interface ListContent {
  readonly station: string;
  /** The day in the station's time zone, and the moment in UTC. */
  readonly on: string;
  readonly at: string;
  /** What was asked for, in words. */
  readonly asked: readonly Told[];
  /** How much is on the list; it counts devices where this is absent. */
  readonly counted?: Told;
}

export const listReport = (
  data: DataTable,
  { station, on, at, asked, counted }: ListContent,
  words: ReportWords,
  widthMm: number,
): Report => ({
  title: data.title,
  station,
  of: words.dateLine(on),
  at: new Date(at),
  strips: [
    heading(data.title, widthMm, textStyles.title),
    ...asked.map((told) => prose(told, widthMm)),
    prose(counted ?? words.tell('deviceCount', { count: data.rows.length }), widthMm, textStyles.strong),
    tableStrip(data, words, widthMm),
    whole(words.tell('caution'), widthMm, textStyles.soft, 4),
  ],
});
