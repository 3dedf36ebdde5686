/** What a column of a fleet list can mean. */
import { z } from 'zod';

export const columnMeanings = [
  'ignore',
  'manufacturer',
  'model',
  'serial',
  'dateOfManufacture',
  'ratedLength',
  'lifelineMaterial',
  'lifelineDiameter',
  'capacity',
  'capacityFrom',
  'capacityTo',
  'standard',
  'loadIndicator',
  'benchId',
  'makerCode',
  'rfidCode',
  'oldTagCode',
  'otherCode',
  'regularUser',
  'purchasedOn',
  'firstUsedOn',
  'typeOfUse',
  'place',
  'standing',
  'inspectedOn',
  'inspectedBy',
  'inspectionResult',
  'inspectionNote',
] as const;
export const columnMeaningSchema = z.enum(columnMeanings);
export type ColumnMeaning = z.infer<typeof columnMeaningSchema>;

/** A device can have several codes, so several columns can hold them; every other meaning stands once. */
export const codeKinds = {
  makerCode: 'maker',
  rfidCode: 'rfid',
  oldTagCode: 'old tag',
  otherCode: 'other',
} as const satisfies Partial<Record<ColumnMeaning, string>>;
export type CodeMeaning = keyof typeof codeKinds;
export const isCodeMeaning = (meaning: ColumnMeaning): meaning is CodeMeaning => meaning in codeKinds;

export const isRepeatable = (meaning: ColumnMeaning): boolean =>
  meaning === 'ignore' || isCodeMeaning(meaning);

const dateMeanings = ['dateOfManufacture', 'purchasedOn', 'firstUsedOn', 'inspectedOn'] as const;
export type DateMeaning = (typeof dateMeanings)[number];

export const isDateMeaning = (meaning: ColumnMeaning): meaning is DateMeaning =>
  dateMeanings.some((each) => each === meaning);

export const importUnits = ['m', 'cm', 'mm', 'ft', 'in', 'kg', 'lb'] as const;
export const importUnitSchema = z.enum(importUnits);
export type ImportUnit = z.infer<typeof importUnitSchema>;

/** The units that numbers of a column can have; none where it holds no quantity. */
export const unitsOf = (meaning: ColumnMeaning): readonly ImportUnit[] => {
  switch (meaning) {
    case 'ratedLength':
      return ['m', 'ft', 'cm', 'mm', 'in'];
    case 'lifelineDiameter':
      return ['mm', 'in'];
    case 'capacity':
    case 'capacityFrom':
    case 'capacityTo':
      return ['kg', 'lb'];
    default:
      return [];
  }
};

export const dateOrders = ['dmy', 'mdy', 'ymd'] as const;
export const dateOrderSchema = z.enum(dateOrders);
export type DateOrder = z.infer<typeof dateOrderSchema>;

/** What a person chose for a column, counted from 0. */
export const columnChoiceSchema = z.object({
  column: z.int().min(0).max(999),
  meaning: columnMeaningSchema,
  /** Of numbers without a unit of their own. */
  unit: importUnitSchema.optional(),
  dates: dateOrderSchema.optional(),
});
export type ColumnChoice = z.infer<typeof columnChoiceSchema>;
