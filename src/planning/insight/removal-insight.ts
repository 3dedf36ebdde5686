/** What the removals of a depot say: which parts, of which devices, how many, and how long devices last until the first. */

import { ageClasses } from '../../domain/age-class.ts';
import type { CalendarDate } from '../../domain/brand.ts';
import { daysBetween } from '../../domain/calendar.ts';
import type { Zone } from '../../domain/procedure.ts';
import { kaplanMeier, type Survival } from './kaplan-meier.ts';
import { type ParetoBar, pareto } from './pareto.ts';
import { type Proportion, wilson } from './wilson.ts';

/** A device as the statistics see it. */
export interface DeviceLife {
  readonly model: string;
  readonly ratedLengthM: number;
  /** Where it is known. */
  readonly yearMade?: number | undefined;
  readonly typeOfUse?: string | undefined;
  /** When it first came into service here: its first pass; absent where it never did. */
  readonly inServiceFrom?: CalendarDate | undefined;
  /** Its removals from service, the earliest first, each with the zones of its reasons. */
  readonly removals: readonly { readonly on: CalendarDate; readonly zones: readonly Zone[] }[];
}

export const dimensions = ['model', 'length', 'age', 'use'] as const;
export type Dimension = (typeof dimensions)[number];

/** Fewer than this in a group say little, and the screen says so. Common practice, no source. */
export const fewDevices = 20;

export interface InsightGroup {
  /** The model, the length in metres, the first year of the age class, or the type of use; `unknown` where it is not known. */
  readonly value: string;
  readonly devices: number;
  /** Devices that were ever removed, of all that ever came into service or were removed. */
  readonly removed: Proportion;
  /** Reasons of all removals, by the part of the device. */
  readonly reasons: readonly ParetoBar<Zone>[];
  readonly reasonCount: number;
  readonly isFew: boolean;
}

/** Over all devices, and in groups by one of their qualities, the largest first. */
export const groupsBy = (
  lives: readonly DeviceLife[],
  dimension: Dimension | 'all',
  today: CalendarDate,
): readonly InsightGroup[] => {
  const groups = new Map<string, DeviceLife[]>();
  for (const life of lives.filter(isWatched)) {
    const value = dimension === 'all' ? 'all' : groupValueOf(life, dimension, today);
    groups.set(value, [...(groups.get(value) ?? []), life]);
  }
  return [...groups]
    .map(([value, members]) => groupOf(value, members))
    .toSorted((one, other) => other.devices - one.devices);
};

/** Without ever having been in service, or removed, a device says nothing. */
const isWatched = ({ inServiceFrom, removals }: DeviceLife): boolean =>
  inServiceFrom !== undefined || removals.length > 0;

const groupOf = (value: string, lives: readonly DeviceLife[]): InsightGroup => {
  const reasons = lives.flatMap(({ removals }) => removals.flatMap((removal) => removal.zones));
  return {
    value,
    devices: lives.length,
    removed: wilson(lives.filter(({ removals }) => removals.length > 0).length, lives.length),
    reasons: pareto(reasons),
    reasonCount: reasons.length,
    isFew: lives.length < fewDevices,
  };
};

const unknown = 'unknown';

const groupValueOf = (life: DeviceLife, dimension: Dimension, today: CalendarDate): string => {
  switch (dimension) {
    case 'model':
      return life.model;
    case 'length':
      return String(life.ratedLengthM);
    case 'use':
      return life.typeOfUse ?? unknown;
    case 'age': {
      if (life.yearMade === undefined) return unknown;
      const years = Number((life.removals[0]?.on ?? today).slice(0, 4)) - life.yearMade;
      return String(ageClasses.findLast((from) => years >= from) ?? ageClasses[0]);
    }
  }
};

/** Days from the first pass here until the first removal after it, or until today where there was none. */
export const survivalOf = (lives: readonly DeviceLife[], today: CalendarDate): Survival =>
  kaplanMeier(
    lives.flatMap(({ inServiceFrom, removals }) => {
      if (inServiceFrom === undefined) return [];
      const first = removals.find(({ on }) => on >= inServiceFrom);
      const time = daysBetween(inServiceFrom, first?.on ?? today);
      return [{ time, isRemoved: first !== undefined }];
    }),
  );
