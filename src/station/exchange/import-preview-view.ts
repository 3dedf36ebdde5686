/** What a person is shown of a fleet list before it is imported. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { declaredResultSchema } from '../../domain/declared-inspection.ts';
import {
  columnMeaningSchema,
  dateOrderSchema,
  importUnitSchema,
} from '../../domain/fleet-import/column-meaning.ts';
import type { Language } from '../../domain/message.ts';
import { modelSheetSchema } from '../../domain/model-sheet.ts';
import { sentenceOf } from '../sentence.ts';
import type { PreparedImport } from './prepare-import.ts';

/** Beyond these nobody reads on; all are counted. */
const mostFaults = 2000;
const mostDevices = 200;
const mostExamples = 5;

export const importPreviewSchema = z.object({
  fileName: z.string(),
  sha256: z.string(),
  sheets: z.array(z.string()),
  sheet: z.string().optional(),
  columns: z.array(
    z.object({
      column: z.int(),
      heading: z.string(),
      meaning: columnMeaningSchema,
      /** What the program proposes, and what that rests on; only a heading is certain. */
      proposed: columnMeaningSchema,
      because: z.enum(['heading', 'contents', 'nothing']),
      unit: importUnitSchema.optional(),
      /** As it was chosen, or as all values of the column decide it. */
      dates: dateOrderSchema.optional(),
      examples: z.array(z.string()),
    }),
  ),
  questions: z.array(
    z.discriminatedUnion('kind', [
      z.object({
        kind: z.literal('date order'),
        column: z.int(),
        fitting: z.array(dateOrderSchema),
        examples: z.array(z.string()),
      }),
      z.object({ kind: z.literal('unit'), column: z.int(), examples: z.array(z.string()) }),
      z.object({
        kind: z.literal('unknown people'),
        count: z.int(),
        examples: z.array(z.string()),
      }),
    ]),
  ),
  /** In the order of the rows, the first 2,000; `faultCount` counts all. */
  faults: z.array(
    z.object({
      /** As a spreadsheet counts it; absent where it is of the whole list. */
      row: z.int().optional(),
      /** From 0. */
      column: z.int().optional(),
      heading: z.string().optional(),
      code: z.string(),
      sentence: z.string(),
    }),
  ),
  faultCount: z.int(),
  counts: z.object({
    rows: z.int(),
    devices: z.int(),
    modelSheets: z.int(),
    inspections: z.int(),
    removed: z.int(),
  }),
  /** Those that would be recorded with the devices. */
  newModelSheets: z.array(modelSheetSchema),
  /** The first 200 devices as they would be registered. */
  devices: z.array(
    z.object({
      row: z.int(),
      benchId: benchIdSchema.optional(),
      manufacturer: z.string(),
      model: z.string(),
      ratedLengthM: z.number(),
      serial: z.string(),
      dateOfManufacture: z.string(),
      codes: z.array(z.string()),
      inspectedOn: calendarDateSchema.optional(),
      result: declaredResultSchema.optional(),
      isRemoved: z.boolean(),
    }),
  ),
  /** Nothing is asked and nothing is at fault. */
  importable: z.boolean(),
});
export type ImportPreview = z.infer<typeof importPreviewSchema>;

export const importPreview = (prepared: PreparedImport, language: Language): ImportPreview => {
  const { table, proposals, columns, questions, faults, devices, newSheets, orders } = prepared;
  return {
    fileName: prepared.fileName,
    sha256: prepared.sha256,
    sheets: [...table.sheets],
    ...(table.sheet === undefined ? {} : { sheet: table.sheet }),
    columns: proposals.map(({ column, heading, meaning: proposed, because }) => {
      const chosen = columns.find((choice) => choice.column === column);
      const dates = chosen?.dates ?? orders.get(column);
      const texts = new Set(table.rows.slice(0, 200).flatMap(({ cells }) => cells[column]?.text || []));
      return {
        column,
        heading,
        meaning: chosen?.meaning ?? 'ignore',
        proposed,
        because,
        ...(chosen?.unit === undefined ? {} : { unit: chosen.unit }),
        ...(dates === undefined ? {} : { dates }),
        examples: [...texts].slice(0, mostExamples).map((text) => text.slice(0, 60).toWellFormed()),
      };
    }),
    questions: questions.map((question) =>
      question.kind === 'date order'
        ? { ...question, fitting: [...question.fitting], examples: [...question.examples] }
        : { ...question, examples: [...question.examples] },
    ),
    faults: faults.slice(0, mostFaults).map(({ row, column, refusal }) => {
      const heading = column === undefined ? undefined : table.headings[column];
      return {
        ...(row === undefined ? {} : { row }),
        ...(column === undefined ? {} : { column }),
        ...(heading === undefined ? {} : { heading }),
        code: refusal.code,
        sentence: sentenceOf(refusal, language),
      };
    }),
    faultCount: faults.length,
    counts: {
      rows: table.rows.length,
      devices: devices.length,
      modelSheets: newSheets.length,
      inspections: devices.filter(({ inspection }) => inspection !== undefined).length,
      removed: devices.filter(({ isRemoved }) => isRemoved).length,
    },
    newModelSheets: [...newSheets],
    devices: devices.slice(0, mostDevices).map((device) => ({
      row: device.row,
      ...(device.benchId === undefined ? {} : { benchId: device.benchId }),
      manufacturer: device.modelSheet.manufacturer,
      model: device.modelSheet.model,
      ratedLengthM: device.modelSheet.ratedLengthM,
      serial: device.serial,
      dateOfManufacture: device.dateOfManufacture,
      codes: device.bound.map(({ otherCode }) => otherCode.code),
      ...(device.inspection === undefined
        ? {}
        : { inspectedOn: device.inspection.inspectedOn, result: device.inspection.result }),
      isRemoved: device.isRemoved,
    })),
    importable: questions.length === 0 && faults.length === 0,
  };
};
