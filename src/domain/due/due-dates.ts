/**
 * When a device is due, and for what: the shortest interval of the standard, the employer, the jurisdiction and the
 * manufacturer wins and is named. No date is ever later than any rule that applies, nor than the tag on the device says.
 */
import type { CalendarDate } from '../brand.ts';
import { addMonths, lastDayOfMonth, lastDayOfMonthBefore } from '../calendar.ts';
import type { Device } from '../device.ts';
import type { ModelSheet } from '../model-sheet.ts';
import type { DueDate } from './due-date.ts';
import { type AppliedRule, type DueDevice, type DueProgram, rulesFor } from './due-rules.ts';

type DatedDevice = DueDevice & Pick<Device, 'standing' | 'lastInspection' | 'taggedDue'>;

/**
 * What a device in service is due for, the earliest first, at most one date for each thing. Nothing is due of a device that
 * has not passed its first documented inspection, nor of one that is out of service.
 */
export const dueDatesOf = (
  device: DatedDevice,
  sheet: ModelSheet,
  program: DueProgram,
): readonly DueDate[] => {
  const { standing, lastInspection, taggedDue } = device;
  if (standing !== 'in service' || lastInspection === undefined) return [];
  const computed = computedDates(device, sheet, program, lastInspection.on);
  const [earliest] = computed;
  if (taggedDue === undefined || (earliest !== undefined && earliest.on <= taggedDue.on)) return computed;
  const { what = 'documented inspection', on } = taggedDue;
  const tagged: DueDate = { what, on, rule: 'tag' };
  return [tagged, ...computed.filter((due) => due.what !== what)];
};

/** What a device would be due for if it passed its documented inspection on this day, the earliest first. */
export const dueDatesOncePassed = (
  device: DueDevice,
  sheet: ModelSheet,
  program: DueProgram,
  inspectedOn: CalendarDate,
): readonly [DueDate, ...DueDate[]] => {
  const [earliest, ...others] = computedDates(device, sheet, program, inspectedOn);
  if (earliest === undefined) throw new Error('Every program has an interval for documented inspections.');
  return [earliest, ...others];
};

/** Every rule that applies to a device in service, each with the date that it would give alone, the earliest first. */
export const dueByEveryRule = (
  device: DatedDevice,
  sheet: ModelSheet,
  program: DueProgram,
): readonly DueDate[] => {
  const { standing, lastInspection } = device;
  return standing === 'in service' && lastInspection !== undefined
    ? datesByRule(device, sheet, program, lastInspection.on)
    : [];
};

/**
 * The last day of a month, never after the exact date: the exact date itself where it is one, else the last day of the
 * month before. No rule known here permits a later one.
 */
export const monthEndOf = (exact: CalendarDate): CalendarDate =>
  exact === lastDayOfMonth(exact) ? exact : lastDayOfMonthBefore(exact);

const computedDates = (
  device: DueDevice,
  sheet: ModelSheet,
  program: DueProgram,
  inspectedOn: CalendarDate,
): readonly DueDate[] => {
  const first = new Map<DueDate['what'], DueDate>();
  for (const due of datesByRule(device, sheet, program, inspectedOn))
    if (!first.has(due.what)) first.set(due.what, due);
  return [...first.values()];
};

const datesByRule = (
  device: DueDevice,
  sheet: ModelSheet,
  program: DueProgram,
  inspectedOn: CalendarDate,
): readonly DueDate[] =>
  rulesFor(device, sheet, program, inspectedOn)
    .map((rule) => ({ ...rule, on: dateBy(rule, program) }))
    .toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));

const dateBy = ({ countedFrom, months }: AppliedRule, { monthEnd }: DueProgram): CalendarDate => {
  const exact = addMonths(countedFrom, months);
  return monthEnd ? monthEndOf(exact) : exact;
};
