/** What the screens are shown of blind re-inspections: nothing that tells what the first found, until the second is signed. */
import { z } from 'zod';
import { benchIdSchema, type CalendarDate, calendarDateSchema } from '../../domain/brand.ts';
import { isBlindTo, type Reinspection, waitingReinspection } from '../../domain/reinspection/reinspection.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { OperationContext } from '../operation.ts';
import { namesOf } from '../views.ts';

const deviceShape = {
  reinspection: z.int(),
  benchId: benchIdSchema,
  manufacturer: z.string(),
  model: z.string(),
  serial: z.string(),
};

export const waitingReinspectionSchema = z.object({
  ...deviceShape,
  drawnOn: calendarDateSchema,
  /** A person's name. */
  drawnBy: z.string(),
  until: calendarDateSchema,
  /** Its place in store, where one was scanned. */
  place: z.string().optional(),
  /** The second inspection, where it was begun. */
  begun: z.int().optional(),
  /** The person of the session may make the second inspection. */
  isForYou: z.boolean(),
});

export const sideSchema = z.object({
  inspection: z.int(),
  on: calendarDateSchema,
  /** A person's name. */
  by: z.string(),
  verdict: z.enum(['pass', 'remove from service']),
});

export const pairSchema = z.object({ ...deviceShape, first: sideSchema, second: sideSchema });
export type ReinspectionPair = z.infer<typeof pairSchema>;

export const waitingViews = async (
  reader: LedgerReader,
  files: readonly Reinspection[],
  person: OperationContext['person'],
  today: CalendarDate,
): Promise<z.infer<typeof waitingReinspectionSchema>[]> => {
  const nameOf = await namesOf(reader);
  const views = [];
  for (const { number, benchId, drawnOn, drawnBy, until } of files) {
    const row = await reader.device(benchId);
    if (row === undefined || waitingReinspection(row.device, today)?.reinspection !== number) continue;
    const { device, modelSheet } = row;
    const begun = device.reinspection?.begun;
    views.push({
      reinspection: number,
      benchId,
      manufacturer: modelSheet.manufacturer,
      model: modelSheet.model,
      serial: device.serial,
      drawnOn,
      drawnBy: nameOf(drawnBy),
      until,
      ...(device.stored === undefined ? {} : { place: device.stored.place }),
      ...(begun === undefined ? {} : { begun }),
      isForYou: isBlindTo(device, person, today),
    });
  }
  return views;
};

/** The pairs whose second inspection is signed, the latest first. */
export const pairViews = async (
  reader: LedgerReader,
  files: readonly Reinspection[],
): Promise<ReinspectionPair[]> => {
  const nameOf = await namesOf(reader);
  const sideOf = async (inspection: number): Promise<z.infer<typeof sideSchema> | undefined> => {
    const signed = (await reader.inspection(inspection))?.signed;
    return signed === undefined || signed.verdict.kind === 'incomplete'
      ? undefined
      : { inspection, on: signed.on, by: nameOf(signed.by), verdict: signed.verdict.kind };
  };
  const views = [];
  for (const { number, benchId, ...file } of files) {
    const row = await reader.device(benchId);
    const first = await sideOf(file.first);
    const second = file.second === undefined ? undefined : await sideOf(file.second);
    if (row === undefined || first === undefined || second === undefined) continue;
    const { manufacturer, model } = row.modelSheet;
    const { serial } = row.device;
    views.push({ reinspection: number, benchId, manufacturer, model, serial, first, second });
  }
  return views;
};
