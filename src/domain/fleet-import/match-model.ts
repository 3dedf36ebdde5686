/** Finds the model sheet that a row means, among those of the station and those that earlier rows of the list propose. */
import { grouped } from '../grouped.ts';
import { type ModelSheet, modelSheetSchema } from '../model-sheet.ts';
import { isRefusal, type Refusal, refusal } from '../refusal.ts';
import { plainWords } from './cell.ts';
import type { ModelFacts } from './fleet-row.ts';

/** In metres: the same length, written in another unit or rounded to the millimetre. */
const sameLength = 0.001;
/** Shares of a length within which two are more likely one, rounded, than two (common practice, no source). */
const nearLength = 0.02;
/** `3/16 in` is 4.76 mm and is sold as 4.8 mm (common practice, no source). */
const sameDiameterMm = 0.15;
/** `310 lb` is 140.6 kg and is marked as 140 kg (common practice, no source). */
const sameWeightKg = 1;

/** Facts without which there is no model sheet, in the order of the sheet. */
const neededFacts = [
  'ratedLengthM',
  'lifelineMaterial',
  'lifelineDiameterMm',
  'capacityKg',
  'standard',
  'loadIndicatorFitted',
] as const;

export class ModelMatcher {
  readonly #known: ReadonlyMap<string, readonly ModelSheet[]>;
  readonly #proposed = new Map<string, ModelSheet[]>();
  readonly #newId: () => string;

  constructor(known: readonly ModelSheet[], newId: () => string) {
    this.#known = grouped(known, keyOf);
    this.#newId = newId;
  }

  /** New sheets, in the order in which rows asked for them. */
  get proposed(): readonly ModelSheet[] {
    return [...this.#proposed.values()].flat();
  }

  /** A sheet of the station, or a new one, which later rows find again; refuses where neither is certain. */
  sheetFor(facts: ModelFacts): ModelSheet | Refusal {
    const key = keyOf(facts);
    const candidates = [...(this.#known.get(key) ?? []), ...(this.#proposed.get(key) ?? [])];
    const found = sheetAmong(candidates, facts);
    if (found !== undefined) return found;
    const sheet = newSheet(facts, this.#newId);
    if (!isRefusal(sheet)) this.#proposed.set(key, [...(this.#proposed.get(key) ?? []), sheet]);
    return sheet;
  }
}

const keyOf = ({ manufacturer, model }: { readonly manufacturer: string; readonly model: string }): string =>
  `${plainWords(manufacturer)}\n${plainWords(model)}`;

const sheetAmong = (
  candidates: readonly ModelSheet[],
  facts: ModelFacts,
): ModelSheet | Refusal | undefined => {
  const { ratedLengthM } = facts;
  const [first, second] = candidates;
  if (first === undefined) return undefined;
  const model = { manufacturer: first.manufacturer, model: first.model };
  if (ratedLengthM === undefined) {
    return second === undefined ? agreeing(first, facts) : refusal('import-length-needed', model);
  }
  const same = candidates.find((sheet) => Math.abs(sheet.ratedLengthM - ratedLengthM) <= sameLength);
  if (same !== undefined) return agreeing(same, facts);
  const near = candidates.find(
    (sheet) => Math.abs(sheet.ratedLengthM - ratedLengthM) <= nearLength * sheet.ratedLengthM,
  );
  return near === undefined
    ? undefined
    : refusal('import-length-near', {
        ...model,
        lengthM: ratedLengthM,
        sheetM: Math.round(near.ratedLengthM * 1000) / 1000,
      });
};

const agreeing = (sheet: ModelSheet, facts: ModelFacts): ModelSheet | Refusal => {
  const { manufacturer, model } = sheet;
  const differs = (fact: string, row: string | number, onSheet: string | number): Refusal =>
    refusal('import-model-differs', { manufacturer, model, fact, row, sheet: onSheet });
  const { lifelineMaterial, lifelineDiameterMm, capacityKg, loadIndicatorFitted } = facts;
  if (lifelineMaterial !== undefined && lifelineMaterial !== sheet.lifelineMaterial)
    return differs('lifelineMaterial', lifelineMaterial, sheet.lifelineMaterial);
  if (
    lifelineDiameterMm !== undefined &&
    Math.abs(lifelineDiameterMm - sheet.lifelineDiameterMm) > sameDiameterMm
  )
    return differs('lifelineDiameter', `${lifelineDiameterMm} mm`, `${sheet.lifelineDiameterMm} mm`);
  if (capacityKg !== undefined && !isSameRange(capacityKg, sheet.capacityKg))
    return differs('capacity', rangeText(capacityKg), rangeText(sheet.capacityKg));
  if (loadIndicatorFitted !== undefined && loadIndicatorFitted !== sheet.loadIndicatorFitted)
    return differs('loadIndicator', yesNo(loadIndicatorFitted), yesNo(sheet.loadIndicatorFitted));
  return sheet;
};

type Range = ModelSheet['capacityKg'];
const isSameRange = (one: Range, other: Range): boolean =>
  Math.abs(one.from - other.from) <= sameWeightKg && Math.abs(one.to - other.to) <= sameWeightKg;
const rangeText = ({ from, to }: Range): string => `${from}–${to} kg`;
const yesNo = (fitted: boolean): string => (fitted ? 'yes' : 'no');

const newSheet = (facts: ModelFacts, newId: () => string): ModelSheet | Refusal => {
  const missing = neededFacts.filter((fact) => facts[fact] === undefined);
  const { manufacturer, model } = facts;
  if (missing.length > 0) {
    return refusal('import-model-unknown', {
      manufacturer,
      model,
      missing: missing.map((fact) => fact.replace(/(M|Mm|Kg|Fitted)$/, '')).join(', '),
    });
  }
  const sheet = modelSheetSchema.safeParse({ modelSheetId: newId(), ...facts });
  return sheet.success
    ? sheet.data
    : refusal('import-model-invalid', {
        manufacturer,
        model,
        fact: sheet.error.issues[0]?.path.join('.') ?? '',
      });
};
