/** The plan of the bench in numbers: whether it fits, what is missing, and week by week. */
import { z } from 'zod';
import { benchCapacitySchema, closureSchema, hoursOf } from '../../domain/bench-capacity.ts';
import { calendarDateSchema } from '../../domain/brand.ts';
import { addDays, mondayOf } from '../../domain/calendar.ts';
import { grouped } from '../../domain/grouped.ts';
import type { BenchDay } from '../../planning/bench-day.ts';
import type { BenchPlan, PlanKind } from '../../planning/bench-plan.ts';
import type { StationPlan } from './bench-planner.ts';

export const planViewSchema = z.object({
  today: calendarDateSchema,
  /** The last day that is planned. */
  until: calendarDateSchema,
  capacity: benchCapacitySchema,
  isCapacitySet: z.boolean(),
  /** No device that is still in time becomes late. */
  keepsEveryDueDate: z.boolean(),
  /** Hours of the bench that are missing in all; 0 where every due date is kept. */
  missingHours: z.number(),
  /** Where they are missing: within these days more inspections are due than there is room for. */
  shortages: z.array(
    z.object({
      from: calendarDateSchema,
      until: calendarDateSchema,
      inspections: z.int(),
      room: z.int(),
      missingHours: z.number(),
    }),
  ),
  counts: z.object({
    overdue: z.int(),
    due: z.int(),
    neverInspected: z.int(),
    /** Devices that are out and must be called in before they are due. */
    callIn: z.int(),
    /** Devices for which there is no room, of every kind. */
    unplanned: z.int(),
    /** Devices that are due after the last planned day. */
    dueLater: z.int(),
  }),
  /** When the last overdue device has been at the bench; absent where none is overdue or not all have a day. */
  overdueUntil: calendarDateSchema.optional(),
  /** Days of the intervals that are lost in all, because inspections come before they are due. */
  daysLost: z.int(),
  /** So many days before it is due a device may be taken: as chosen, or more where due dates need it. */
  earliestDays: z.int(),
  /** From that of today to the last with an inspection, without a gap. */
  weeks: z.array(
    z.object({
      /** The first day that is planned, and the Sunday. */
      from: calendarDateSchema,
      until: calendarDateSchema,
      planned: z.int(),
      room: z.int(),
      plannedHours: z.number(),
      roomHours: z.number(),
      overdue: z.int(),
      neverInspected: z.int(),
      closures: z.array(closureSchema),
    }),
  ),
});
export type PlanView = z.infer<typeof planViewSchema>;

export const planView = ({ today, capacity, isCapacitySet, plan }: StationPlan): PlanView => {
  const hours = (inspections: number): number => hoursOf(inspections, capacity);
  const shortages = plan.shortages.map((short) => ({
    ...short,
    missingHours: hours(short.inspections - short.room),
  }));
  const all = [...plan.planned, ...plan.unplanned];
  const count = (kind: PlanKind): number => all.filter((each) => each.kind === kind).length;
  const overdueUntil = plan.unplanned.some(({ kind }) => kind === 'overdue')
    ? undefined
    : plan.planned.findLast(({ kind }) => kind === 'overdue')?.on;
  return {
    today,
    until: plan.days.at(-1)?.on ?? today,
    capacity,
    isCapacitySet,
    keepsEveryDueDate: shortages.length === 0,
    missingHours: shortages.reduce((total, { missingHours }) => total + missingHours, 0),
    shortages,
    counts: {
      overdue: count('overdue'),
      due: count('due'),
      neverInspected: count('never inspected'),
      callIn: all.filter(({ callIn }) => callIn).length,
      unplanned: plan.unplanned.length,
      dueLater: plan.dueLater,
    },
    ...(overdueUntil === undefined ? {} : { overdueUntil }),
    daysLost: plan.planned.reduce((total, { daysEarly }) => total + daysEarly, 0),
    earliestDays: plan.earliestDays,
    weeks: weeksOf(plan, hours),
  };
};

const weeksOf = (plan: BenchPlan, hours: (inspections: number) => number): PlanView['weeks'] => {
  const last = plan.planned.at(-1)?.on ?? plan.days[0]?.on ?? '';
  const mondays = new Map(plan.days.map(({ on }) => [on, mondayOf(on)]));
  const weeks = grouped(plan.days, ({ on }) => mondays.get(on) ?? on);
  const planned = grouped(plan.planned, ({ on }) => mondays.get(on) ?? on);
  return [...weeks]
    .filter(([monday]) => monday <= last)
    .map(([monday, days]) => {
      const inspections = planned.get(monday) ?? [];
      const count = (kind: PlanKind): number => inspections.filter((each) => each.kind === kind).length;
      const room = days.reduce((total, day) => total + day.room, 0);
      return {
        from: days[0]?.on ?? monday,
        until: addDays(monday, 6),
        planned: inspections.length,
        room,
        plannedHours: hours(inspections.length),
        roomHours: hours(room),
        overdue: count('overdue'),
        neverInspected: count('never inspected'),
        closures: closuresOf(days),
      };
    });
};

const closuresOf = (days: readonly BenchDay[]): PlanView['weeks'][number]['closures'] => [
  ...new Set(days.flatMap(({ closed }) => (closed === undefined ? [] : [closed]))),
];
