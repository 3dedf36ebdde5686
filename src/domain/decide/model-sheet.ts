/** The rules of model sheets. */
import type { ModelSheet } from '../model-sheet.ts';
import { refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** One sheet for each maker, model and rated length. */
export const decideRecordModelSheet = (sheet: ModelSheet, known: readonly ModelSheet[]): Decision => {
  if (sheet.capacityKg.from >= sheet.capacityKg.to)
    return refusal('capacity-range-reversed', {}, 'modelSheet.capacityKg');
  const twin = known.find((other) => identity(other) === identity(sheet));
  return twin === undefined
    ? [{ type: 'model-sheet.recorded', modelSheet: sheet }]
    : refusal(
        'model-sheet-exists',
        { manufacturer: sheet.manufacturer, model: sheet.model, modelSheetId: twin.modelSheetId },
        'modelSheet.model',
      );
};

/** One contact for all sheets of a manufacturer; sheets that say it already stay as they are. */
export const decideSetContact = (
  manufacturer: string,
  manufacturerContact: string,
  known: readonly ModelSheet[],
): Decision => {
  const sheets = known.filter((sheet) => sheet.manufacturer.toLowerCase() === manufacturer.toLowerCase());
  if (sheets.length === 0) return refusal('manufacturer-unknown', { manufacturer }, 'manufacturer');
  return sheets
    .filter((sheet) => sheet.manufacturerContact !== manufacturerContact)
    .map((sheet) => ({ type: 'model-sheet.recorded', modelSheet: { ...sheet, manufacturerContact } }));
};

const identity = ({ manufacturer, model, ratedLengthM }: ModelSheet): string =>
  `${manufacturer}\n${model}\n${Math.round(ratedLengthM * 1000)}`.toLowerCase();
