/** The plan of the bench as a pick list and as a calendar, and the notices. */
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { type CalendarDate, calendarDate } from '../../domain/brand.ts';
import { addDays } from '../../domain/calendar.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { toCalendarFile } from '../../reports/calendar-file.ts';
import type { DataTable } from '../../reports/data-table.ts';
import { type ListContent, listReport } from '../../reports/list-report.ts';
import { noticesTable, type PlanRow, pickListTable, whereabouts } from '../../reports/plan-table.ts';
import type { ReportWords, Told } from '../../reports/report-words.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { noticesOf } from '../schedule/field-notices.ts';
import { type PlannedDevice, plannedDevices } from '../schedule/planned-device.ts';
import type { ComposeControl, Composition } from './compose-report.ts';

/** From today, and until the last planned day, where they are absent. */
export interface PlanPeriod {
  readonly from?: CalendarDate | undefined;
  readonly until?: CalendarDate | undefined;
}

export const planComposition = async (
  context: OperationContext,
  period: PlanPeriod,
  { words, signal }: ComposeControl,
): Promise<Composition | Refusal> => {
  const found = await context.planner.plan(context);
  if (isRefusal(found)) return found;
  const { plan, today } = found;
  const from = period.from ?? today;
  const until = period.until ?? plan.days.at(-1)?.on ?? today;
  if (until < from) return refusal('schedule-period-backwards', { from, until }, 'of.until');
  const inspections = plan.planned.filter(({ on }) => from <= on && on <= until);
  const read = await context.ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const { dueSoonDays } = await programIn(reader, context.rules);
    const devices = await plannedDevices(reader, inspections, dueSoonDays, today);
    return isRefusal(devices) ? devices : { station, rows: devices.map(planRow) };
  });
  if (isRefusal(read)) return read;
  signal.throwIfAborted();
  const { station, rows } = read;
  const at = context.now();
  const asked = words.tell('askedPlanned', { from: words.date(from), until: words.date(until) });
  return {
    ...listComposition(`bench-plan-${from}`, pickListTable(rows, words), [asked], words, {
      station: station.name,
      on: today,
      at,
    }),
    calendar: () =>
      toCalendarFile(
        {
          at,
          events: rows.map((row) => ({
            uid: `${row.benchId}-${row.dueOn ?? 'first'}@${station.stationId}.srl-bench`,
            on: row.on ?? today,
            summary: words.line('calendarSummary', {
              benchId: formatBenchId(row.benchId),
              manufacturer: row.manufacturer,
              model: row.model,
            }),
            description: descriptionOf(row, words),
          })),
        },
        (on) => addDays(calendarDate(on), 1),
      ),
  };
};

export const noticesComposition = async (
  context: OperationContext,
  { words }: ComposeControl,
): Promise<Composition | Refusal> => {
  const station = await context.ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const notices = await noticesOf(context);
  if (isRefusal(notices)) return notices;
  const on = context.occasion(station).on;
  const devices = notices.devices.map(({ why, planned }) => ({ ...planRow(planned), why }));
  const data = noticesTable(devices, notices.training, words);
  const counted = words.tell('noticeCount', { count: data.rows.length });
  const day = { station: station.name, on, at: context.now(), counted };
  return listComposition(`notices-${on}`, data, [words.tell('askedNotices')], words, day);
};

const listComposition = (
  fileName: string,
  data: DataTable,
  asked: readonly Told[],
  words: ReportWords,
  day: Omit<ListContent, 'asked'>,
): Composition => ({
  fileName,
  data,
  report: (widthMm) => listReport(data, { ...day, asked }, words, widthMm),
});

const planRow = ({ device, ...planned }: PlannedDevice): PlanRow => ({
  ...planned,
  benchId: device.benchId,
  manufacturer: device.manufacturer,
  model: device.model,
  serial: device.serial,
  dueOn: device.dueOn,
});

const descriptionOf = (row: PlanRow, words: ReportWords): readonly string[] => [
  `${words.line('serial')}: ${row.serial}`,
  `${words.line('nextDue')}: ${row.dueOn === undefined ? words.line('due-never inspected') : words.dateLine(row.dueOn)}`,
  `${words.line('planWhere')}: ${whereabouts(row, words).join(' / ')}`,
];
