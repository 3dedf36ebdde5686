/** Reads the rows of a fleet list by what a person chose for its columns; whatever cannot be read is a fault or a question. */
import { parseBenchId } from '../bench-id/bench-id.ts';
import { type CalendarDate, calendarDate } from '../brand.ts';
import { placeCodeSchema } from '../custody/place-code.ts';
import { factsFault } from '../decide/equipment-facts.ts';
import type { DeclaredResult } from '../declared-inspection.ts';
import { type OtherCode, otherCodeSchema } from '../device.ts';
import type { EquipmentFacts } from '../equipment-facts.ts';
import { type Refusal, type RefusalCode, refusal } from '../refusal.ts';
import { type Cell, emptyCell, type TableRow } from './cell.ts';
import {
  type ColumnChoice,
  type ColumnMeaning,
  codeKinds,
  type DateMeaning,
  type DateOrder,
  isCodeMeaning,
  unitsOf,
} from './column-meaning.ts';
import type { FleetRow, ModelFacts, RowFault } from './fleet-row.ts';
import { wordIn } from './import-words.ts';
import { type DateRules, dateIn, readDate } from './read-date.ts';
import {
  type Bounds,
  diameterBounds,
  lengthBounds,
  type Quantity,
  readQuantity,
  readRange,
  weightBounds,
} from './read-quantity.ts';

export interface RowRules extends DateRules {
  readonly today: CalendarDate;
  readonly columns: readonly ColumnChoice[];
  /** The order of the dates of a column, where it is known. */
  orderOf(column: number): DateOrder | undefined;
}

/** Characters that a text of the record has at most, as its schemas say. */
const mostCharacters: Partial<Record<ColumnMeaning, number>> = {
  manufacturer: 80,
  model: 80,
  serial: 80,
  standard: 120,
  inspectedBy: 120,
  inspectionNote: 500,
  regularUser: 120,
};

export interface ReadRow {
  /** Absent where its faults leave no device of it. */
  readonly row?: FleetRow;
  readonly faults: readonly RowFault[];
}

export const readRow = (row: TableRow, rules: RowRules): ReadRow => new RowReader(row, rules).read();

class RowReader {
  readonly #row: TableRow;
  readonly #rules: RowRules;
  readonly #faults: RowFault[] = [];

  constructor(row: TableRow, rules: RowRules) {
    this.#row = row;
    this.#rules = rules;
  }

  read(): ReadRow {
    const manufacturer = this.#needed('manufacturer');
    const model = this.#needed('model');
    const serial = this.#identifier('serial', this.#needed('serial'));
    const dateOfManufacture = this.#date('dateOfManufacture') ?? '';
    const benchId = this.#benchId();
    const codes = this.#codes();
    const facts: ModelFacts = { manufacturer, model, ...this.#modelFacts() };
    const inspection = this.#inspection(dateOfManufacture);
    const equipment = this.#equipmentFacts(dateOfManufacture);
    const regularUser = this.#text('regularUser');
    const typeOfUse = this.#word('typeOfUse', this.#rules.words.uses);
    const place = this.#place();
    const standing = this.#word('standing', this.#rules.words.standings);
    const isRemoved = standing === 'out of service' || this.#result() === 'removed';
    const faults = this.#faults;
    if (faults.length > 0) return { faults };
    return {
      faults,
      row: {
        row: this.#row.number,
        model: facts,
        serial,
        dateOfManufacture,
        ...(benchId === undefined ? {} : { benchId }),
        codes,
        ...(regularUser === '' ? {} : { regularUser }),
        ...(typeOfUse === undefined ? {} : { typeOfUse }),
        ...(place === undefined ? {} : { place }),
        ...(inspection === undefined ? {} : { inspection }),
        isRemoved,
        ...equipment,
      },
    };
  }

  #columnOf(meaning: ColumnMeaning): ColumnChoice | undefined {
    return this.#rules.columns.find((choice) => choice.meaning === meaning);
  }

  #cell(meaning: ColumnMeaning): Cell {
    const column = this.#columnOf(meaning)?.column;
    return column === undefined ? emptyCell : (this.#row.cells[column] ?? emptyCell);
  }

  #fault(meaning: ColumnMeaning, refused: Refusal): void {
    const column = this.#columnOf(meaning)?.column;
    this.#faults.push({
      row: this.#row.number,
      ...(column === undefined ? {} : { column }),
      refusal: refused,
    });
  }

  #wrong(meaning: ColumnMeaning, code: RefusalCode, values: Refusal['values'] = {}): undefined {
    this.#fault(meaning, refusal(code, { text: this.#cell(meaning).text.slice(0, 80), ...values }));
    return undefined;
  }

  #text(meaning: ColumnMeaning): string {
    const { text } = this.#cell(meaning);
    const most = mostCharacters[meaning];
    if (most !== undefined && text.length > most) this.#wrong(meaning, 'import-too-long', { most });
    return text;
  }

  #needed(meaning: 'manufacturer' | 'model' | 'serial'): string {
    const text = this.#text(meaning);
    if (text === '') this.#wrong(meaning, `import-no-${meaning}`);
    return text;
  }

  /** A number with more digits than a spreadsheet keeps was rounded, and is not what stands on the device. */
  #identifier(meaning: ColumnMeaning, text: string): string {
    const isRounded =
      /^[-+]?\d([.,]\d+)?E\+?\d+$/i.test(text) ||
      (this.#cell(meaning).kind === 'number' && text.replace(/\D/g, '').length > 15);
    if (isRounded) this.#wrong(meaning, 'import-number-rounded');
    return text;
  }

  #word<Name extends string>(
    meaning: ColumnMeaning,
    lists: Readonly<Record<Name, readonly string[]>>,
  ): Name | undefined {
    const { text } = this.#cell(meaning);
    if (text === '') return undefined;
    const named = wordIn(text, lists);
    const words = Object.values<readonly string[]>(lists)
      .flatMap((list) => [...new Set([...list.slice(0, 1), ...list.slice(-1)])])
      .join('; ');
    return named ?? this.#wrong(meaning, 'import-word-unknown', { words });
  }

  /** As a label has it, in capitals. */
  #place(): string | undefined {
    const text = this.#text('place').toUpperCase();
    if (text === '') return undefined;
    return placeCodeSchema.safeParse(text).success ? text : this.#wrong('place', 'import-place-not-code');
  }

  #result(): DeclaredResult | undefined {
    return wordIn(this.#cell('inspectionResult').text, this.#rules.words.results);
  }

  #date(meaning: DateMeaning): string | undefined {
    const cell = this.#cell(meaning);
    const choice = this.#columnOf(meaning);
    if (cell.text === '' || choice === undefined) return undefined;
    const reading = readDate(cell, this.#rules);
    const order = choice.dates ?? this.#rules.orderOf(choice.column);
    if (reading.kind === 'by order' && order === undefined) return undefined;
    const date = dateIn(reading, order);
    if (date === undefined) return this.#wrong(meaning, 'import-date-not-read');
    return date > this.#rules.today ? this.#wrong(meaning, 'import-date-to-come') : date;
  }

  #benchId(): FleetRow['benchId'] {
    const { text } = this.#cell('benchId');
    if (text === '') return undefined;
    const parsed = parseBenchId(text);
    return parsed.kind === 'exact' ? parsed.id : this.#wrong('benchId', 'bench-id-not-exact');
  }

  #codes(): OtherCode[] {
    const codes: OtherCode[] = [];
    for (const { meaning, column } of this.#rules.columns) {
      if (!isCodeMeaning(meaning)) continue;
      for (const code of (this.#row.cells[column]?.text ?? '').split('\n').map((line) => line.trim())) {
        if (code === '') continue;
        const parsed = otherCodeSchema.safeParse({ code, kind: codeKinds[meaning] });
        if (parsed.success) codes.push(parsed.data);
        else {
          const fault = refusal('import-code-length', { text: code.slice(0, 80) });
          this.#faults.push({ row: this.#row.number, column, refusal: fault });
        }
      }
    }
    return codes;
  }

  #quantity(meaning: ColumnMeaning, bounds: Bounds): number | undefined {
    const { text } = this.#cell(meaning);
    const unit = this.#columnOf(meaning)?.unit;
    return text === ''
      ? undefined
      : this.#value(meaning, readQuantity(text, bounds, unit, unitsOf(meaning), this.#rules.words));
  }

  /** A number without a unit is no fault of the row: the unit of its column is asked once. */
  #value(meaning: ColumnMeaning, quantity: Quantity): number | undefined {
    switch (quantity.kind) {
      case 'quantity':
        return quantity.value;
      case 'unit needed':
        return undefined;
      case 'not read':
        return this.#wrong(meaning, 'import-quantity-not-read', { units: unitsOf(meaning).join('/') });
    }
  }

  #modelFacts(): Omit<ModelFacts, 'manufacturer' | 'model'> {
    const { words } = this.#rules;
    const ratedLengthM = this.#quantity('ratedLength', lengthBounds);
    const diameterM = this.#quantity('lifelineDiameter', diameterBounds);
    const lifelineMaterial = this.#word('lifelineMaterial', words.materials);
    const capacityKg = this.#capacity();
    const standard = this.#text('standard');
    const loadIndicator = this.#word('loadIndicator', { yes: words.yes, no: words.no });
    return {
      ...(ratedLengthM === undefined ? {} : { ratedLengthM }),
      ...(lifelineMaterial === undefined ? {} : { lifelineMaterial }),
      ...(diameterM === undefined ? {} : { lifelineDiameterMm: Math.round(diameterM * 1e7) / 1e4 }),
      ...(capacityKg === undefined ? {} : { capacityKg }),
      ...(standard === '' ? {} : { standard }),
      ...(loadIndicator === undefined ? {} : { loadIndicatorFitted: loadIndicator === 'yes' }),
    };
  }

  #capacity(): ModelFacts['capacityKg'] {
    const { text } = this.#cell('capacity');
    const range =
      text === '' ? undefined : readRange(text, this.#columnOf('capacity')?.unit, this.#rules.words);
    if (range?.from.kind === 'not read' || range?.to.kind === 'not read')
      return this.#wrong('capacity', 'import-capacity-not-read');
    const from = range === undefined ? this.#quantity('capacityFrom', weightBounds) : amountOf(range.from);
    const to = range === undefined ? this.#quantity('capacityTo', weightBounds) : amountOf(range.to);
    if (from === undefined || to === undefined) return undefined;
    if (from >= to) {
      this.#fault(range === undefined ? 'capacityTo' : 'capacity', refusal('capacity-range-reversed'));
      return undefined;
    }
    return { from: toTheTenth(from), to: toTheTenth(to) };
  }

  #equipmentFacts(dateOfManufacture: string): EquipmentFacts {
    const purchasedOn = this.#date('purchasedOn');
    const firstUsedOn = this.#date('firstUsedOn');
    const facts = {
      ...(purchasedOn === undefined ? {} : { purchasedOn }),
      ...(firstUsedOn === undefined ? {} : { firstUsedOn }),
    };
    const fault = factsFault(facts, dateOfManufacture, this.#rules.today);
    if (fault !== undefined) this.#fault(fault.field === 'purchasedOn' ? fault.field : 'firstUsedOn', fault);
    return facts;
  }

  #inspection(dateOfManufacture: string): FleetRow['inspection'] {
    const faultsBefore = this.#faults.length;
    const result = this.#word('inspectionResult', this.#rules.words.results);
    const inspectedOn = this.#date('inspectedOn');
    const inspectedBy = this.#text('inspectedBy');
    const note = this.#text('inspectionNote');
    if (this.#faults.length > faultsBefore) return undefined;
    if (inspectedOn === undefined) {
      const isAsked = this.#cell('inspectedOn').text !== '';
      const isDeclared = inspectedBy !== '' || (result !== undefined && result !== 'not stated');
      if (isDeclared && !isAsked) this.#wrong('inspectedOn', 'import-inspection-without-date');
      return undefined;
    }
    if (inspectedOn.length < 10) return this.#wrong('inspectedOn', 'import-date-without-day');
    if (inspectedOn < dateOfManufacture) return this.#wrong('inspectedOn', 'import-inspected-before-made');
    return {
      inspectedOn: calendarDate(inspectedOn),
      inspectedBy,
      result: result ?? 'not stated',
      ...(note === '' ? {} : { note }),
    };
  }
}

const amountOf = (quantity: Quantity): number | undefined =>
  quantity.kind === 'quantity' ? quantity.value : undefined;

const toTheTenth = (kilograms: number): number => Math.round(kilograms * 10) / 10;
