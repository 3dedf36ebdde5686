/**
 * Why a device stays out of service whatever its inspection finds: its revalidation or its service life is over, or its
 * documented inspection was missed and the program calls for revalidation then (ANSI/ASSP Z359.14, notes to Appendix A, from
 * memory: a missed inspection by a competent person calls for revalidation or disposal).
 */
import type { CalendarDate } from '../brand.ts';
import { addDays } from '../calendar.ts';
import type { Device } from '../device.ts';
import type { ModelSheet } from '../model-sheet.ts';
import type { Program } from '../program.ts';
import type { ProgramInForce } from '../program-in-force.ts';
import type { Reason } from '../verdict.ts';
import type { DueDate } from './due-date.ts';
import { dueDatesOf, dueDatesOncePassed } from './due-dates.ts';
import { currentUse } from './type-of-use.ts';

export const programReasons = (
  device: Device,
  sheet: ModelSheet,
  { program, since }: ProgramInForce,
  today: CalendarDate,
): readonly Reason[] => [
  ...dueDatesOncePassed(device, sheet, program, today)
    .filter(({ on }) => on < today)
    .flatMap(overReason),
  ...missedReason(device, sheet, program, today, since),
];

const overReason = ({ what, on }: DueDate): readonly Reason[] => {
  switch (what) {
    case 'documented inspection':
      return [];
    case 'revalidation':
      return [
        {
          key: 'program.revalidation-overdue',
          zone: 'history',
          effect: 'refer-to-manufacturer',
          sentence: {
            en: `Revalidation by the manufacturer was due on ${on}.`,
            es: `La revalidación por el fabricante vencía el ${on}.`,
          },
        },
      ];
    case 'service life':
      return [
        {
          key: 'program.service-life-over',
          zone: 'history',
          effect: 'remove',
          sentence: {
            en: `The service life stated by the manufacturer ended on ${on}.`,
            es: `La vida útil indicada por el fabricante terminó el ${on}.`,
          },
        },
      ];
  }
};

const missedReason = (
  device: Device,
  sheet: ModelSheet,
  program: Program,
  today: CalendarDate,
  since: CalendarDate | undefined,
): readonly Reason[] => {
  const { rule, graceDays } = program.missedInspection;
  const on = missableDate(device, sheet, program, since);
  if (rule === 'inspect' || on === undefined || today <= addDays(on, graceDays)) return [];
  if (device.revalidation !== undefined && device.revalidation.revalidatedOn > on) return [];
  return [
    {
      key: 'program.inspection-missed',
      zone: 'history',
      effect: 'refer-to-manufacturer',
      sentence: {
        en: `Its documented inspection was due on ${on} and was missed: revalidation by the manufacturer, or disposal.`,
        es: `Su inspección documentada vencía el ${on} y no se hizo: revalidación por el fabricante o retirada definitiva.`,
      },
    },
  ];
};

/**
 * The date by which the documented inspection was to be made. A rule that came into force later was not missed before that
 * day; the date on the tag counts as it stands.
 */
const missableDate = (
  device: Device,
  sheet: ModelSheet,
  program: Program,
  since: CalendarDate | undefined,
): CalendarDate | undefined => {
  const due = dueDatesOf(device, sheet, program).find(({ what }) => what === 'documented inspection');
  if (due === undefined || due.rule === 'tag') return due?.on;
  const [inForce] = [due.on, since, currentUse(device.uses)?.from]
    .filter((day) => day !== undefined)
    .sort()
    .toReversed();
  const { on: tagged, what = 'documented inspection' } = device.taggedDue ?? {};
  return what === 'documented inspection' && tagged !== undefined && inForce !== undefined && tagged < inForce
    ? tagged
    : inForce;
};
