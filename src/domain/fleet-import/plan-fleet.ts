/** What a fleet list would add to the register: devices, model sheets and declared inspections; nothing is recorded here. */
import type { ModelSheet } from '../model-sheet.ts';
import { isRefusal, refusal } from '../refusal.ts';
import type { Table } from './cell.ts';
import { type ColumnChoice, type DateOrder, isDateMeaning, isRepeatable, unitsOf } from './column-meaning.ts';
import type { FleetRow, RowFault } from './fleet-row.ts';
import { ModelMatcher } from './match-model.ts';
import { type ColumnOrder, type DateReading, orderOfColumn, readDate } from './read-date.ts';
import { diameterBounds, lengthBounds, readQuantity, readRange, weightBounds } from './read-quantity.ts';
import { type RowRules, readRow } from './read-rows.ts';

/** What the list does not say and a person has to. */
export type ImportQuestion =
  | {
      readonly kind: 'date order';
      readonly column: number;
      readonly fitting: readonly DateOrder[];
      readonly examples: readonly string[];
    }
  | { readonly kind: 'unit'; readonly column: number; readonly examples: readonly string[] }
  /** Regular users who are nobody at this station. */
  | { readonly kind: 'unknown people'; readonly examples: readonly string[]; readonly count: number };

export interface PlannedDevice extends FleetRow {
  readonly modelSheet: ModelSheet;
  readonly regularUserId?: string;
}

export interface FleetPlan {
  readonly questions: readonly ImportQuestion[];
  readonly faults: readonly RowFault[];
  readonly newSheets: readonly ModelSheet[];
  readonly devices: readonly PlannedDevice[];
  /** The orders that the values of the date columns decide. */
  readonly orders: ReadonlyMap<number, DateOrder>;
}

export interface PlanRules extends Omit<RowRules, 'orderOf' | 'daysFrom1904'> {
  readonly knownSheets: readonly ModelSheet[];
  newSheetId(): string;
  /** The person whom a name, a badge or an ID means, or `undefined`. */
  personMeant(text: string): string | undefined;
  /** Devices of people who are nobody at this station are taken in without a regular user. */
  readonly withoutUnknownPeople: boolean;
}

const mostExamples = 5;

/** Pure, and all at once: the order of the dates is known only when every row was looked at. */
export const planFleet = (table: Table, rules: PlanRules): FleetPlan => {
  const misplaced = columnFaults(table, rules.columns);
  if (misplaced.length > 0)
    return { questions: [], faults: misplaced, newSheets: [], devices: [], orders: new Map() };
  const dateRules = { ...rules, daysFrom1904: table.daysFrom1904 };
  const orders = new Map(
    rules.columns
      .filter(({ meaning, dates }) => isDateMeaning(meaning) && dates === undefined)
      .map(({ column }) => [column, orderOfColumn(datesOf(table, column, dateRules))] as const),
  );
  const orderOf = (column: number): DateOrder | undefined => {
    const found = orders.get(column);
    return found?.kind === 'decided' ? found.order : undefined;
  };
  const read = table.rows.map((row) => readRow(row, { ...dateRules, orderOf }));
  const faults = read.flatMap((each) => each.faults);
  const rows = read.flatMap(({ row }) => row ?? []);
  faults.push(...twinFaults(rows, rules.columns));
  const matcher = new ModelMatcher(rules.knownSheets, rules.newSheetId);
  const unknown = new Set<string>();
  const devices = rows.flatMap((row): PlannedDevice[] => {
    const modelSheet = matcher.sheetFor(row.model);
    if (isRefusal(modelSheet)) {
      faults.push({ row: row.row, ...at(rules.columns, 'model'), refusal: modelSheet });
      return [];
    }
    const { regularUser } = row;
    const regularUserId = regularUser === undefined ? undefined : rules.personMeant(regularUser);
    if (regularUser !== undefined && regularUserId === undefined) unknown.add(regularUser);
    return [{ ...row, modelSheet, ...(regularUserId === undefined ? {} : { regularUserId }) }];
  });
  return {
    questions: [
      ...orderQuestions(table, orders),
      ...unitQuestions(table, rules),
      ...(unknown.size === 0 || rules.withoutUnknownPeople
        ? []
        : [
            {
              kind: 'unknown people' as const,
              examples: [...unknown].slice(0, mostExamples),
              count: unknown.size,
            },
          ]),
    ],
    faults: faults.sort((a, b) => (a.row ?? 0) - (b.row ?? 0)),
    newSheets: matcher.proposed,
    devices,
    orders: new Map(
      [...orders].flatMap(([column, order]) => (order.kind === 'decided' ? [[column, order.order]] : [])),
    ),
  };
};

/** What keeps a list from being read at all: a column that is not there, a meaning twice, a needed one nowhere. */
const columnFaults = (table: Table, columns: readonly ColumnChoice[]): readonly RowFault[] => {
  const faults: RowFault[] = [];
  for (const [index, { column, meaning, unit }] of columns.entries()) {
    const heading = table.headings[column];
    if (heading === undefined)
      faults.push({ refusal: refusal('import-column-missing', { column: column + 1 }) });
    else if (columns.findIndex((other) => other.column === column) !== index)
      faults.push({ column, refusal: refusal('import-column-twice', { heading }) });
    else if (!isRepeatable(meaning) && columns.findIndex((other) => other.meaning === meaning) !== index)
      faults.push({ column, refusal: refusal('import-meaning-twice', { heading, meaning }) });
    else if (unit !== undefined && !unitsOf(meaning).includes(unit))
      faults.push({ column, refusal: refusal('import-unit-wrong', { heading, unit }) });
  }
  for (const needed of ['manufacturer', 'model', 'serial'] as const) {
    if (!columns.some(({ meaning }) => meaning === needed))
      faults.push({ refusal: refusal('import-meaning-needed', { meaning: needed }) });
  }
  return faults;
};

const at = (columns: readonly ColumnChoice[], meaning: ColumnChoice['meaning']): { column?: number } => {
  const column = columns.find((choice) => choice.meaning === meaning)?.column;
  return column === undefined ? {} : { column };
};

const textsOf = (table: Table, column: number): readonly string[] =>
  table.rows.flatMap(({ cells }) => cells[column]?.text || []);

const datesOf = (
  table: Table,
  column: number,
  rules: Parameters<typeof readDate>[1],
): readonly DateReading[] =>
  table.rows.flatMap(({ cells }) => {
    const cell = cells[column];
    return cell === undefined || cell.text === '' ? [] : [readDate(cell, rules)];
  });

const orderQuestions = (table: Table, orders: ReadonlyMap<number, ColumnOrder>): readonly ImportQuestion[] =>
  [...orders].flatMap(([column, order]) =>
    order.kind === 'undecided'
      ? [
          {
            kind: 'date order' as const,
            column,
            fitting: order.fitting,
            examples: [...new Set(textsOf(table, column))].slice(0, mostExamples),
          },
        ]
      : [],
  );

const unitQuestions = (table: Table, rules: PlanRules): readonly ImportQuestion[] =>
  rules.columns.flatMap(({ column, meaning, unit }) => {
    const allowed = unitsOf(meaning);
    if (allowed.length === 0 || unit !== undefined) return [];
    const isBare = (text: string): boolean => {
      if (meaning === 'capacity') {
        const { from, to } = readRange(text, undefined, rules.words);
        return from.kind === 'unit needed' || to.kind === 'unit needed';
      }
      const bounds =
        meaning === 'ratedLength'
          ? lengthBounds
          : meaning === 'lifelineDiameter'
            ? diameterBounds
            : weightBounds;
      return readQuantity(text, bounds, undefined, allowed, rules.words).kind === 'unit needed';
    };
    const bare = [...new Set(textsOf(table, column))].filter(isBare);
    return bare.length === 0
      ? []
      : [{ kind: 'unit' as const, column, examples: bare.slice(0, mostExamples) }];
  });

/**
 * The same serial number of a model or the same bench ID on two rows: the later one is at fault. Codes are compared where
 * they have their one form.
 */
const twinFaults = (rows: readonly FleetRow[], columns: readonly ColumnChoice[]): readonly RowFault[] => {
  const faults: RowFault[] = [];
  const seen = new Map<string, number>();
  const look = (row: FleetRow, key: string, meaning: ColumnChoice['meaning'], text: string): void => {
    const earlier = seen.get(key);
    if (earlier === undefined) seen.set(key, row.row);
    else {
      const fault = refusal('import-twin', { text, row: earlier });
      faults.push({ row: row.row, ...at(columns, meaning), refusal: fault });
    }
  };
  for (const row of rows) {
    const { manufacturer, model } = row.model;
    look(row, ['serial', manufacturer, model, row.serial].join('\n').toLowerCase(), 'serial', row.serial);
    if (row.benchId !== undefined) look(row, `bench ID\n${row.benchId}`, 'benchId', row.benchId);
  }
  return faults;
};
