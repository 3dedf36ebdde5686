/** The rules of model sheets. */
import type { ModelSheet } from '../model-sheet.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** One sheet for each maker, model and rated length. */
export const decideRecordModelSheet = (sheet: ModelSheet, known: readonly ModelSheet[]): Decision => {
  if (sheet.capacityKg.from >= sheet.capacityKg.to)
    return refusal('capacity-range-reversed', {}, 'modelSheet.capacityKg');
  const aboveNominal = minimumAboveNominal(sheet);
  if (aboveNominal !== undefined) return aboveNominal;
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

/** The minimum of the manual, entered or corrected on a sheet that is there already; open inspections are held against it too. */
export const decideSetMinimumDiameter = (
  sheet: ModelSheet,
  lifelineMinimumDiameterMm: ModelSheet['lifelineDiameterMm'],
): Decision => {
  const modelSheet = { ...sheet, lifelineMinimumDiameterMm };
  const aboveNominal = minimumAboveNominal(modelSheet);
  if (aboveNominal !== undefined) return aboveNominal;
  return sheet.lifelineMinimumDiameterMm === lifelineMinimumDiameterMm
    ? []
    : [{ type: 'model-sheet.recorded', modelSheet }];
};

const minimumAboveNominal = ({
  lifelineMinimumDiameterMm: minimumMm,
  lifelineDiameterMm: nominalMm,
}: ModelSheet): Refusal | undefined =>
  minimumMm === undefined || minimumMm <= nominalMm
    ? undefined
    : refusal(
        'minimum-diameter-above-nominal',
        { minimumMm, nominalMm },
        'modelSheet.lifelineMinimumDiameterMm',
      );

const identity = ({ manufacturer, model, ratedLengthM }: ModelSheet): string =>
  `${manufacturer}\n${model}\n${Math.round(ratedLengthM * 1000)}`.toLowerCase();
