/** A request to a report that can be written: what the record says of its subject, set in the words that are asked for. */
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { toCsv } from '../../reports/csv.ts';
import type { DataTable } from '../../reports/data-table.ts';
import { frameOf } from '../../reports/paper.ts';
import { type Report, renderReport } from '../../reports/render-report.ts';
import { ReportWords } from '../../reports/report-words.ts';
import { toWorkbook } from '../../reports/workbook.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import type { WorkControl } from '../work-jobs.ts';
import { deviceComposition } from './compose-device.ts';
import { heldComposition } from './compose-held.ts';
import { inspectionComposition } from './compose-inspection.ts';
import { dueComposition, registerComposition } from './compose-list.ts';
import { noticesComposition, planComposition } from './compose-plan.ts';
import { returnComposition } from './compose-return.ts';
import { returnPlanComposition } from './compose-return-plan.ts';
import type { ReportRequest, ReportSubject } from './report-request.ts';

/** A report before it is written: as pages, and as a table where it is one. */
export interface Composition {
  /** Without an ending. */
  readonly fileName: string;
  report(widthMm: number): Report;
  readonly data?: DataTable;
  /** As a calendar file, where it is of days to come. */
  calendar?(): Uint8Array;
}

export interface ComposeControl extends WorkControl {
  readonly words: ReportWords;
}

export interface WrittenReport {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  /** Of a PDF. */
  readonly pages?: number;
  /** Of a table. */
  readonly rows?: number;
}

/** A PDF of more rows would have more pages than anybody turns, and take the memory of the station. */
const mostRowsOnPaper = 10_000;

/** Stops with what the signal was aborted with. */
export const composeReport = async (
  context: OperationContext,
  request: ReportRequest,
  control: WorkControl,
): Promise<WrittenReport | Refusal> => {
  const station = await context.ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const { language } = request;
  const first = language === 'both' ? context.language : language;
  const second = first === 'en' ? 'es' : 'en';
  const words = new ReportWords(language === 'both' ? [first, second] : [first], station.lengthUnit);
  const composed = await compositionOf(context, request.of, { ...control, words });
  if (isRefusal(composed)) return composed;
  const { data } = composed;
  const rows = data === undefined ? {} : { rows: data.rows.length };
  const fileName = `${composed.fileName}.${request.format}`;
  if (request.format === 'pdf') {
    if ((data?.rows.length ?? 0) > mostRowsOnPaper)
      return refusal('report-too-long', { rows: data?.rows.length ?? 0, most: mostRowsOnPaper }, 'format');
    const report = composed.report(frameOf(request.paper).textWidthMm);
    const { pdf, pages } = await renderReport(report, request.paper, words, control);
    return { fileName, bytes: pdf, pages, ...rows };
  }
  if (request.format === 'ics') {
    if (composed.calendar === undefined)
      return refusal('report-format-not-offered', { format: request.format }, 'format');
    return { fileName, bytes: composed.calendar(), ...rows };
  }
  if (data === undefined) return refusal('report-format-not-offered', { format: request.format }, 'format');
  const bytes = request.format === 'csv' ? toCsv(data) : await toWorkbook(data);
  control.signal.throwIfAborted();
  return { fileName, bytes, ...rows };
};

const compositionOf = (
  context: OperationContext,
  of: ReportSubject,
  control: ComposeControl,
): Promise<Composition | Refusal> => {
  switch (of.kind) {
    case 'inspection':
      return inspectionComposition(context, of.inspection, control);
    case 'device':
      return deviceComposition(context, of.benchId, control);
    case 'register':
      return registerComposition(context, of, control);
    case 'due':
      return dueComposition(context, of.until, control);
    case 'bench-plan':
      return planComposition(context, of, control);
    case 'notices':
      return noticesComposition(context, control);
    case 'held':
      return heldComposition(context, of.list, control);
    case 'return':
      return returnComposition(context, of, control);
    case 'return-plan':
      return returnPlanComposition(context, of.job, control);
  }
};
