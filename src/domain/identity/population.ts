/**
 * The devices that might lie on the bench: those of the register, and how a device that is not in it would look.
 *
 * The u side of the weights is taken from the register's own frequencies, smoothed. Devices outside the register are
 * taken to be of the same makers and models as those in it, in like proportion, save for a part of models that the
 * register does not hold. Within a model and year of manufacture the facts are taken to be independent of each other;
 * between models and years they are not, so that a model's name, length and material do not count three times.
 */
import type { ModelSheet } from '../model-sheet.ts';
import { comparable } from './fragment.ts';
import { manufacturedIn, type RegisteredDevice } from './registered-device.ts';
import { SerialHabit } from './serial-habit.ts';

/** Of the devices outside the register: how many are of a model that it does not hold. Common practice, no source. */
export const newModelShare = 0.25;

/** Smoothing: each model counts as half a device more, and the years of a model as one device of another year. */
const modelCounts = 0.5;
const otherYearCounts = 1;

export interface Model {
  readonly sheet: ModelSheet;
  /** Of the devices in the register. */
  readonly share: number;
}

/** Devices of one model and year of manufacture; a model of other years, or a model that is not in the register. */
export interface Group {
  readonly model: Model | undefined;
  readonly year: string | undefined;
  /** Of the devices outside the register. */
  readonly share: number;
  readonly serials: SerialHabit;
}

/** A device of the register, and the group that it belongs to. */
export interface Member {
  readonly device: RegisteredDevice;
  /** In comparable form; empty where it is not known. */
  readonly serial: string;
  readonly group: Group;
}

export interface Population {
  readonly members: readonly Member[];
  readonly models: readonly Model[];
  readonly groups: readonly Group[];
}

interface Counted {
  readonly sheet: ModelSheet;
  count: number;
  readonly serials: SerialHabit;
  readonly years: Map<string, { count: number; readonly serials: SerialHabit }>;
}

/** A device whose model sheet is not given is left out. */
export const populationOf = (
  devices: readonly RegisteredDevice[],
  modelSheets: readonly ModelSheet[],
): Population => {
  const counted = new Map<string, Counted>(
    modelSheets.map((sheet) => [
      sheet.modelSheetId,
      { sheet, count: 0, serials: new SerialHabit(), years: new Map() },
    ]),
  );
  const known = devices
    .filter(({ modelSheetId }) => counted.has(modelSheetId))
    .map((device) => ({ device, serial: comparable(device.serial), year: yearOf(device) }));
  for (const { device, serial, year } of known) count(counted.get(device.modelSheetId), serial, year);
  const all = known.length + modelCounts * counted.size;
  const models = new Map<string, Model>();
  const groups = new Map<string, Group>();
  for (const [modelSheetId, { sheet, count, serials, years }] of counted) {
    const model = { sheet, share: (count + modelCounts) / all };
    models.set(modelSheetId, model);
    const share = (1 - newModelShare) * model.share;
    const inYears = count + otherYearCounts;
    for (const [year, of] of years) {
      groups.set(groupKey(modelSheetId, year), {
        model,
        year: year === '' ? undefined : year,
        share: (share * of.count) / inYears,
        serials: of.serials,
      });
    }
    groups.set(groupKey(modelSheetId, 'other'), {
      model,
      year: undefined,
      share: (share * otherYearCounts) / inYears,
      serials,
    });
  }
  groups.set('new', {
    model: undefined,
    year: undefined,
    share: counted.size === 0 ? 1 : newModelShare,
    serials: new SerialHabit(),
  });
  return {
    members: known.flatMap(({ device, serial, year }) => {
      const group = groups.get(groupKey(device.modelSheetId, year));
      return group === undefined ? [] : [{ device, serial, group }];
    }),
    models: [...models.values()],
    groups: [...groups.values()],
  };
};

const groupKey = (modelSheetId: string, year: string): string => `${year} ${modelSheetId}`;

/** Empty where the date does not say. */
const yearOf = ({ dateOfManufacture }: RegisteredDevice): string =>
  manufacturedIn(dateOfManufacture)?.year ?? '';

const count = (counted: Counted | undefined, serial: string, year: string): void => {
  if (counted === undefined) return;
  counted.count += 1;
  const inYear = counted.years.get(year) ?? { count: 0, serials: new SerialHabit(counted.serials) };
  counted.years.set(year, inYear);
  inYear.count += 1;
  inYear.serials.learn(serial);
};
