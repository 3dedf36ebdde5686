/** The register and the due list, out of one consistent read. */
import type { CalendarDate } from '../../domain/brand.ts';
import { addDays } from '../../domain/calendar.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import type { DeviceQuery, LedgerReader } from '../../ledger/ledger.ts';
import type { DataTable } from '../../reports/data-table.ts';
import { dueTable, type FleetRow, registerTable } from '../../reports/fleet-tables.ts';
import { listReport } from '../../reports/list-report.ts';
import type { ReportWords, Told } from '../../reports/report-words.ts';
import { type DeviceFilter, deviceQueryOf } from '../device-filter.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { deviceSummary, namesOf } from '../views.ts';
import type { ComposeControl, Composition } from './compose-report.ts';

const devicesAtOnce = 500;

interface Day {
  readonly station: string;
  readonly on: CalendarDate;
  readonly at: string;
  readonly dueSoonDays: number;
}

export const registerComposition = async (
  context: OperationContext,
  filter: DeviceFilter,
  control: ComposeControl,
): Promise<Composition | Refusal> => {
  const found = await rowsOf(context, control, ({ on, dueSoonDays }) => [
    deviceQueryOf(filter, on, dueSoonDays),
  ]);
  if (isRefusal(found)) return found;
  const { words } = control;
  const data = registerTable(found.rows, words);
  return composition('register', data, found.day, askedOf(filter, words), words);
};

export const dueComposition = async (
  context: OperationContext,
  asked: CalendarDate | undefined,
  control: ComposeControl,
): Promise<Composition | Refusal> => {
  const untilOf = ({ on, dueSoonDays }: Day): CalendarDate => asked ?? addDays(on, dueSoonDays);
  const found = await rowsOf(context, control, (day) => [
    { dueBefore: addDays(untilOf(day), 1) },
    { standing: ['new'] },
  ]);
  if (isRefusal(found)) return found;
  const { words } = control;
  const told = words.tell('askedUntil', { until: words.date(untilOf(found.day)) });
  return composition('due', dueTable(found.rows, words), found.day, [told], words);
};

const composition = (
  name: string,
  data: DataTable,
  day: Day,
  asked: readonly Told[],
  words: ReportWords,
): Composition => ({
  fileName: `${name}-${day.on}`,
  data,
  report: (widthMm) => listReport(data, { ...day, asked }, words, widthMm),
});

type Query = Omit<DeviceQuery, 'limit' | 'offset'>;

const rowsOf = (
  context: OperationContext,
  control: ComposeControl,
  queriesOf: (day: Day) => readonly Query[],
): Promise<{ readonly day: Day; readonly rows: readonly FleetRow[] } | Refusal> =>
  context.ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const { on, at } = context.occasion(station);
    const { dueSoonDays } = programInForce(station, context.rules.shipped).program;
    const day = { station: station.name, on, at, dueSoonDays };
    const nameOf = await namesOf(reader);
    const rows: FleetRow[] = [];
    for (const query of queriesOf(day)) {
      for await (const row of devicesOf(reader, query, control.signal)) {
        const { regularUserId } = row.device;
        rows.push({
          ...deviceSummary(row, on, dueSoonDays),
          ...(regularUserId === undefined ? {} : { regularUser: nameOf(regularUserId) }),
        });
      }
    }
    return { day, rows };
  });

async function* devicesOf(reader: LedgerReader, query: Query, signal: AbortSignal) {
  for (let offset = 0, more = true; more; offset += devicesAtOnce) {
    signal.throwIfAborted();
    const { rows } = await reader.devices({ ...query, limit: devicesAtOnce, offset });
    yield* rows;
    more = rows.length === devicesAtOnce;
  }
}

const askedOf = (
  { search, standing, due, unprovedTag }: DeviceFilter,
  words: ReportWords,
): readonly Told[] => {
  const list = (messages: readonly { readonly en: string; readonly es: string }[]) => ({
    en: messages.map(({ en }) => en.toLowerCase()).join(', '),
    es: messages.map(({ es }) => es.toLowerCase()).join(', '),
  });
  const said = [
    ...(search === undefined || search === '' ? [] : [words.tell('askedSearch', { search })]),
    ...(standing === undefined
      ? []
      : [
          words.tell('askedStanding', {
            standing: list(standing.map((each) => words.message(`standing-${each}`))),
          }),
        ]),
    ...(due === undefined ? [] : [words.tell('askedDue', { due: list([words.message(`due-${due}`)]) })]),
    ...(unprovedTag === true ? [words.tell('askedUnproved')] : []),
  ];
  return said.length === 0 ? [words.tell('askedAll')] : said;
};
