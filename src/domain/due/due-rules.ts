/** Every rule that applies to a device in service, with its interval and where it comes from. */
import type { CalendarDate } from '../brand.ts';
import type { Device } from '../device.ts';
import type { ModelSheet } from '../model-sheet.ts';
import type { Source } from '../procedure.ts';
import type { Program } from '../program.ts';
import { firstUseDay, type LifeFacts, manufactureDay, revalidatedDay } from './counted-from.ts';
import type { DueRule, DueWhat } from './due-date.ts';
import { currentUse, standardIntervals, type TypeOfUse, typeOfUseSource, typesOfUse } from './type-of-use.ts';

/** What of a program decides on due dates. */
export type DueProgram = Pick<
  Program,
  'inspectionInterval' | 'typesOfUse' | 'jurisdictions' | 'employerRules' | 'monthEnd'
>;

export type DueDevice = LifeFacts & Pick<Device, 'modelSheetId' | 'uses'>;

export interface AppliedRule {
  readonly what: DueWhat;
  readonly rule: Exclude<DueRule, 'tag'>;
  readonly months: number;
  readonly countedFrom: CalendarDate;
  readonly source: Source;
}

type Interval = Omit<AppliedRule, 'what' | 'countedFrom'>;

/**
 * The standard's, the employer's, the jurisdictions' and the manufacturer's, in this order; the manufacturer's service life
 * at the end. `inspectedOn` is the day of the last documented inspection that the device passed.
 */
export const rulesFor = (
  device: DueDevice,
  sheet: ModelSheet,
  program: DueProgram,
  inspectedOn: CalendarDate,
): readonly AppliedRule[] => {
  const use = currentUse(device.uses)?.typeOfUse;
  const inspections = inspectionIntervals(device.modelSheetId, use, sheet, program);
  const revalidations = revalidationIntervals(device.modelSheetId, use, sheet, program);
  return [
    ...inspections.map((each) => ({
      what: 'documented inspection' as const,
      countedFrom: inspectedOn,
      ...each,
    })),
    ...revalidations.map((each) => ({
      what: 'revalidation' as const,
      countedFrom: revalidatedDay(device),
      ...each,
    })),
    ...serviceLife(device, sheet),
  ];
};

const inspectionIntervals = (
  modelSheetId: string,
  use: TypeOfUse | undefined,
  sheet: ModelSheet,
  program: DueProgram,
): readonly Interval[] => [
  ...(use === undefined ? [] : [ofStandard(inspectionChoice(use, program))]),
  {
    rule: 'employer',
    months: program.inspectionInterval.months,
    source: program.inspectionInterval.source,
  },
  ...employers(modelSheetId, use, program, 'inspectionMonths'),
  ...program.jurisdictions.map(({ inspectionMonths, source }) => ({
    rule: 'jurisdiction' as const,
    months: inspectionMonths,
    source,
  })),
  ...ofManufacturer(sheet, sheet.manufacturerIntervalMonths),
];

/**
 * As long as nobody has determined the type of use, a program that goes by it holds the device to the longest of its
 * intervals, which is due no earlier than any type of use could make it.
 */
const revalidationIntervals = (
  modelSheetId: string,
  use: TypeOfUse | undefined,
  sheet: ModelSheet,
  program: DueProgram,
): readonly Interval[] => {
  const choices = use === undefined ? (program.typesOfUse === undefined ? [] : typesOfUse) : [use];
  const longest = Math.max(...choices.map((each) => revalidationChoice(each, program)));
  return [
    ...(choices.length === 0 ? [] : [ofStandard(longest)]),
    ...employers(modelSheetId, use, program, 'revalidationMonths'),
    ...ofManufacturer(sheet, sheet.manufacturerRevalidationMonths),
  ];
};

/** In months; the stricter end of the standard's range where the program does not choose. */
export const inspectionChoice = (use: TypeOfUse, { typesOfUse: chosen }: Pick<Program, 'typesOfUse'>) =>
  chosen?.[use].inspectionMonths ?? standardIntervals[use].inspectionMonths.least;

export const revalidationChoice = (use: TypeOfUse, { typesOfUse: chosen }: Pick<Program, 'typesOfUse'>) =>
  chosen?.[use].revalidationMonths ?? standardIntervals[use].revalidationMonths;

const ofStandard = (months: number): Interval => ({ rule: 'standard', months, source: typeOfUseSource });

const employers = (
  modelSheetId: string,
  use: TypeOfUse | undefined,
  { employerRules }: DueProgram,
  interval: 'inspectionMonths' | 'revalidationMonths',
): readonly Interval[] =>
  employerRules
    .filter(
      (rule) =>
        (rule.typeOfUse === undefined || rule.typeOfUse === use) &&
        (rule.modelSheetId === undefined || rule.modelSheetId === modelSheetId),
    )
    .flatMap(({ [interval]: months, why }) =>
      months === undefined
        ? []
        : [{ rule: 'employer' as const, months, source: { mark: 'employer' as const, citation: why } }],
    );

const ofManufacturer = (sheet: ModelSheet, months: number | undefined): readonly Interval[] =>
  months === undefined ? [] : [{ rule: 'manufacturer', months, source: manualOf(sheet) }];

const manualOf = ({ manufacturer, model, manual }: ModelSheet): Source => ({
  mark: 'manufacturer',
  citation: manual ?? `${manufacturer} ${model}`,
});

const serviceLife = (device: DueDevice, sheet: ModelSheet): readonly AppliedRule[] => {
  const life = sheet.serviceLife;
  return life === undefined
    ? []
    : [
        {
          what: 'service life',
          rule: 'manufacturer',
          months: life.years * 12,
          countedFrom: life.from === 'first use' ? firstUseDay(device) : manufactureDay(device),
          source: manualOf(sheet),
        },
      ];
};
