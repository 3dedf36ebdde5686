/** The rules of model sheets. */
import type { ModelSheet, ServiceLife } from '../model-sheet.ts';
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

/** An interval that is absent stays as it is; `null` says that the manual states none. */
export interface IntervalsChange {
  readonly manufacturerIntervalMonths?: number | null | undefined;
  readonly manufacturerRevalidationMonths?: number | null | undefined;
  readonly serviceLife?: ServiceLife | null | undefined;
}

/** The due dates of all devices of the model follow at once; none moves past the date on its status tag. */
export const decideSetIntervals = (sheet: ModelSheet, change: IntervalsChange): Decision => {
  const {
    manufacturerIntervalMonths: inspection,
    manufacturerRevalidationMonths: revalidation,
    serviceLife: life,
    ...rest
  } = sheet;
  const modelSheet: ModelSheet = {
    ...rest,
    ...stated('manufacturerIntervalMonths', change.manufacturerIntervalMonths, inspection),
    ...stated('manufacturerRevalidationMonths', change.manufacturerRevalidationMonths, revalidation),
    ...stated('serviceLife', change.serviceLife, life),
  };
  const isSame =
    modelSheet.manufacturerIntervalMonths === inspection &&
    modelSheet.manufacturerRevalidationMonths === revalidation &&
    modelSheet.serviceLife?.years === life?.years &&
    modelSheet.serviceLife?.from === life?.from;
  return isSame ? [] : [{ type: 'model-sheet.recorded', modelSheet }];
};

const stated = <Value>(
  name: keyof IntervalsChange,
  said: Value | null | undefined,
  before: Value | undefined,
): Partial<ModelSheet> => {
  const now = said === undefined ? before : (said ?? undefined);
  return now === undefined ? {} : { [name]: now };
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
