/** The plan of the bench as a person reads it in the terminal. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { OutputOf } from '../station/contract.ts';
import type { Job } from './job.ts';
import { columns, dateText } from './wording.ts';

type Words = Pick<Job, 'words' | 'language'>;

export const planLines = (plan: OutputOf<'schedule.plan'>, { words, language }: Words): readonly string[] => {
  const day = (on: (typeof plan)['today']): string => dateText(on, language);
  const { counts } = plan;
  return [
    plan.keepsEveryDueDate
      ? words('schedule-fits', { until: day(plan.until) })
      : words('schedule-short', { hours: hoursText(plan.missingHours, language) }),
    ...plan.shortages.map(({ from, until, inspections, room, missingHours }) =>
      words('schedule-shortage', {
        from: day(from),
        until: day(until),
        inspections,
        room,
        hours: hoursText(missingHours, language),
      }),
    ),
    words('schedule-counts', { ...counts, daysLost: plan.daysLost, earliest: plan.earliestDays }),
    ...(counts.callIn === 0 ? [] : [words('schedule-call-in', { count: counts.callIn })]),
    ...(counts.unplanned === 0 ? [] : [words('schedule-without-room', { count: counts.unplanned })]),
    ...(plan.isCapacitySet ? [] : [words('schedule-assumed')]),
    ...columns([
      [words('schedule-week'), words('schedule-planned'), words('schedule-room')],
      ...plan.weeks.map(({ from, until, planned, room, plannedHours, roomHours }) => [
        `${day(from)} – ${day(until)}`,
        `${planned} (${hoursText(plannedHours, language)} h)`,
        `${room} (${hoursText(roomHours, language)} h)`,
      ]),
    ]),
  ];
};

export const dueLines = (found: OutputOf<'schedule.due'>, { words, language }: Words): readonly string[] => [
  words('schedule-due-counts', { overdue: found.overdue, neverInspected: found.neverInspected }),
  ...columns(
    found.periods.map(({ from, until, due }) => [
      `${dateText(from, language)} – ${dateText(until, language)}`,
      String(due),
    ]),
  ),
];

export const noticeLines = (
  { devices, training }: OutputOf<'schedule.notices'>,
  { words, language }: Words,
): readonly string[] =>
  devices.length + training.length === 0
    ? [words('schedule-no-notices')]
    : [
        ...devices.map(({ why, planned: { device, holder = '' } }) =>
          words(`schedule-notice-${why}`, {
            device: `${formatBenchId(device.benchId)} ${device.manufacturer} ${device.model}`,
            holder,
            date: device.dueOn === undefined ? '' : dateText(device.dueOn, language),
          }),
        ),
        ...training.map(({ name, notice, on }) =>
          words(`schedule-training-${notice}`, { name, date: dateText(on, language) }),
        ),
      ];

export const capacityLines = (
  { capacity, isSet }: OutputOf<'bench.capacity'>,
  { words, language }: Words,
): readonly string[] => [
  ...columns(
    Object.entries(capacity.hours).map(([weekday, hours]) => [
      words(`weekday-${weekday as keyof typeof capacity.hours}`),
      `${hoursText(hours, language)} h`,
    ]),
  ),
  words('schedule-capacity', {
    minutes: capacity.minutesPerInspection,
    days: capacity.mostDaysEarly,
  }),
  ...capacity.closures.map(({ from, until, name = '' }) =>
    `${words('schedule-closed', { from: dateText(from, language), until: dateText(until, language) })} ${name}`.trimEnd(),
  ),
  ...(isSet ? [] : [words('schedule-assumed')]),
];

/** With the decimal mark of the language. */
const hoursText = (hours: number, language: Words['language']): string =>
  new Intl.NumberFormat(language === 'es' ? 'es-ES' : 'en-GB', { maximumFractionDigits: 2 }).format(hours);
