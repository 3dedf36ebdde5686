/** The rules of adopting a program: it is never weaker than the trade, and an administrator signs it. */
import type { CalendarDate } from '../brand.ts';
import { longestInspectionMonths } from '../due/trade-program.ts';
import { standardIntervals, type TypeOfUse, typesOfUse } from '../due/type-of-use.ts';
import type { Station } from '../evolve.ts';
import {
  leastPersons,
  type ReleaseRules,
  type StrictRelease,
  type Weakness,
  weakness,
} from '../held/release-rules.ts';
import type { Message } from '../message.ts';
import type { ModelSheet } from '../model-sheet.ts';
import type { Program } from '../program.ts';
import { programInForce } from '../program-in-force.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** A program as it is wanted; its version is given by the station. */
export type ProgramSettings = Omit<Program, 'version'>;

export interface Adoption {
  readonly settings: ProgramSettings;
  readonly effectiveFrom: CalendarDate;
}

export interface AdoptionPlace {
  readonly station: Station;
  /** All that the product ships, and the one of them that holds while none is adopted. */
  readonly presets: readonly Program[];
  readonly shipped: Program;
  readonly releaseRules: ReleaseRules;
  readonly modelSheets: readonly Pick<ModelSheet, 'modelSheetId'>[];
}

/** Adopts a program from today or an earlier day on. Its version is the next one of its key. */
export const decideAdoptProgram = (
  { settings, effectiveFrom }: Adoption,
  { station, presets, shipped, releaseRules, modelSheets }: AdoptionPlace,
  on: CalendarDate,
): Decision => {
  if (effectiveFrom > on)
    return refusal('program-effective-in-future', { on: effectiveFrom }, 'effectiveFrom');
  const fault = programFault(settings, shipped, releaseRules) ?? unknownModel(settings, modelSheets);
  if (fault !== undefined) return fault;
  const { program: current, since } = programInForce(station, shipped);
  const program = { ...settings, version: nextVersion(settings.key, station, presets) };
  if (since === effectiveFrom && isSame({ ...program, version: current.version }, current))
    return refusal('program-unchanged', { version: current.version }, 'program');
  return [{ type: 'program.adopted', program, effectiveFrom }];
};

/** What makes a program weaker than the trade, or senseless, or `undefined` where it may be adopted. */
export const programFault = (
  settings: ProgramSettings,
  shipped: Program,
  releaseRules: ReleaseRules,
): Refusal | undefined => {
  const { inspectionInterval, typesOfUse: chosen, employerRules, removalGrounds } = settings;
  if (inspectionInterval.months > longestInspectionMonths)
    return refusal(
      'program-inspection-too-rare',
      { months: inspectionInterval.months, most: longestInspectionMonths },
      'program.inspectionInterval.months',
    );
  for (const use of typesOfUse) {
    const fault = chosen && choiceFault(use, chosen[use]);
    if (fault !== undefined) return fault;
  }
  const empty = employerRules.findIndex(
    ({ inspectionMonths, revalidationMonths }) =>
      inspectionMonths === undefined && revalidationMonths === undefined,
  );
  if (empty >= 0)
    return refusal('program-rule-empty', { number: empty + 1 }, `program.employerRules.${empty}`);
  const missing = shipped.removalGrounds.find(({ key }) => removalGrounds.every((each) => each.key !== key));
  if (missing !== undefined)
    return refusal('program-ground-missing', { ground: missing.key }, 'program.removalGrounds');
  const keys = removalGrounds.map(({ key }) => key);
  const twice = keys.find((key, index) => keys.indexOf(key) !== index);
  return twice === undefined
    ? releaseFault(settings, releaseRules)
    : refusal('program-ground-twice', { ground: twice }, 'program.removalGrounds');
};

/** A program may ask for more before a return than the product does, and never for less. */
const releaseFault = ({ release = [] }: ProgramSettings, rules: ReleaseRules): Refusal | undefined => {
  for (const [index, own] of release.entries()) {
    const field = `program.release.${index}`;
    if (release.findIndex((other) => other.for === own.for) < index)
      return refusal('program-release-twice', { for: own.for }, field);
    const fault = weakness(rules, own);
    if (fault !== undefined) return weaknessRefusal(fault, own, rules, field);
  }
  return undefined;
};

const weaknessRefusal = (
  fault: Weakness,
  { for: of }: StrictRelease,
  rules: ReleaseRules,
  field: string,
): Refusal => {
  const label = (kind: string): Message | string =>
    rules.kinds.find(({ key }) => key === kind)?.label ?? kind;
  switch (fault.what) {
    case 'weaker':
      return refusal('program-release-weaker', { for: of, kind: label(fault.kind) }, field);
    case 'unknown kind':
      return refusal('program-release-kind-unknown', { kind: label(fault.kind), for: of }, field);
    case 'unknown rule':
      return refusal('program-release-rule-unknown', { for: of }, field);
    case 'too few persons':
      return refusal('program-release-persons', { for: of, least: leastPersons }, field);
  }
};

const choiceFault = (
  use: TypeOfUse,
  { inspectionMonths, revalidationMonths }: NonNullable<Program['typesOfUse']>[TypeOfUse],
): Refusal | undefined => {
  const standard = standardIntervals[use];
  const field = (interval: string) => `program.typesOfUse.${use}.${interval}`;
  if (inspectionMonths > standard.inspectionMonths.most)
    return refusal(
      'program-use-inspection-too-rare',
      { use, months: inspectionMonths, most: standard.inspectionMonths.most },
      field('inspectionMonths'),
    );
  return revalidationMonths > standard.revalidationMonths
    ? refusal(
        'program-use-revalidation-too-rare',
        { use, months: revalidationMonths, most: standard.revalidationMonths },
        field('revalidationMonths'),
      )
    : undefined;
};

const unknownModel = (
  { employerRules }: ProgramSettings,
  modelSheets: AdoptionPlace['modelSheets'],
): Refusal | undefined => {
  const known = new Set(modelSheets.map(({ modelSheetId }) => modelSheetId));
  const unknown = employerRules.find(
    ({ modelSheetId }) => modelSheetId !== undefined && !known.has(modelSheetId),
  )?.modelSheetId;
  return unknown === undefined
    ? undefined
    : refusal('model-sheet-unknown', { modelSheetId: unknown }, 'program.employerRules');
};

const nextVersion = (key: string, { programs = [] }: Station, presets: readonly Program[]): number =>
  Math.max(0, ...[...programs, ...presets].filter((each) => each.key === key).map(({ version }) => version)) +
  1;

/** Whatever the order of the keys. */
const isSame = (one: unknown, other: unknown): boolean => {
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null)
    return one === other;
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].every((key) =>
    isSame((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key]),
  );
};
