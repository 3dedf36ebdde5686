/** The rules of blind re-inspections: which devices are drawn, and who may make the second inspection. */
import type { CalendarDate } from '../brand.ts';
import { addDays } from '../calendar.ts';
import type { Device } from '../device.ts';
import type { DomainEvent, Occasion } from '../event.ts';
import type { Inspection } from '../inspection.ts';
import type { Person } from '../person.ts';
import { refusal } from '../refusal.ts';
import { waitingReinspection } from '../reinspection/reinspection.ts';
import type { Decision } from './decision.ts';
import { knowsFirst, notBack, unfitToSign } from './inspection.ts';

/** A device with the inspection that it would be held against. */
export interface Drawable {
  readonly device: Device;
  readonly first: Inspection;
  /** Whether it went out to a user on the day of the first inspection or later. */
  readonly wentOut: boolean;
}

/** The last day on which the second inspection may begin. */
export const lastDayOf = ({ signed, startedOn }: Inspection, withinDays: number): CalendarDate =>
  addDays(signed?.on ?? startedOn, withinDays);

/**
 * A device that is here as its latest inspection left it, passed or removed: not handed out, shipped, released or held for
 * anything else since, and not under a fall case. What a second inspection found is never held against a third.
 */
export const mayBeDrawn = (
  { device, first, wentOut }: Drawable,
  withinDays: number,
  on: CalendarDate,
): boolean =>
  (device.standing === 'in service' || device.standing === 'quarantined') &&
  first.signed !== undefined &&
  first.reinspection === undefined &&
  device.lastInspection?.inspection === first.inspection &&
  device.lastTagNumber === first.signed.tagNumber &&
  lastDayOf(first, withinDays) >= on &&
  !wentOut &&
  waitingReinspection(device, on) === undefined &&
  device.custody === undefined &&
  device.openCheckIn === undefined &&
  device.openInspection === undefined &&
  device.presumedIdentity === undefined &&
  device.release === undefined &&
  device.returnBatch === undefined &&
  device.fallCases === undefined;

export interface Draw {
  /** Random numbers of 32 bits, one for each device that is wanted. */
  readonly numbers: readonly number[];
  /** That of the first re-inspection that comes of it. */
  readonly next: number;
  readonly withinDays: number;
}

/**
 * Draws as many devices as there are numbers, or all where there are fewer. Each number n of 32 bits chooses the place
 * ⌊n · devices ÷ 2³²⌋ among those that are left, in the order of their bench IDs.
 */
export const decideDraw = (
  among: readonly Drawable[],
  { numbers, next, withinDays }: Draw,
  on: CalendarDate,
): Decision => {
  const left = among
    .filter((each) => mayBeDrawn(each, withinDays, on))
    .toSorted((one, other) => (one.device.benchId < other.device.benchId ? -1 : 1));
  if (left.length === 0) return refusal('reinspection-none-to-draw', { days: withinDays });
  const events: DomainEvent[] = [];
  for (const number of numbers.slice(0, left.length)) {
    const of = left.length;
    for (const { device, first } of left.splice(Math.floor((number * of) / 2 ** 32), 1))
      events.push({
        type: 'reinspection.drawn',
        reinspection: next + events.length,
        benchId: device.benchId,
        first: first.inspection,
        until: lastDayOf(first, withinDays),
        knownTo: whoKnows(first),
        lot: { number, of },
      });
  }
  return events;
};

/** Whoever began, answered or signed it. */
const whoKnows = ({ startedBy, answers, signed }: Inspection): string[] => [
  ...new Set([
    startedBy,
    ...Object.values(answers).map(({ by }) => by),
    ...(signed === undefined ? [] : [signed.by]),
  ]),
];

/**
 * Begins the second inspection, by a competent person who says that they do not know what the first one found and of whom
 * the record does not say otherwise. A removed device is inspected where it is held; it stays out of service.
 */
export const decideBeginBlind = (
  device: Device,
  inspection: number,
  procedure: Inspection['procedure'],
  person: Person,
  occasion: Occasion,
): Decision => {
  const { benchId, openInspection } = device;
  const waiting = waitingReinspection(device, occasion.on);
  if (waiting === undefined) return refusal('reinspection-not-drawn', { benchId });
  const refused =
    knowsFirst(device, person) ??
    unfitToSign(person, device, occasion) ??
    notBack(device) ??
    (openInspection === undefined
      ? undefined
      : refusal('inspection-already-open', { inspection: openInspection }));
  if (refused !== undefined) return refused;
  const { reinspection } = waiting;
  return [{ type: 'inspection.started', inspection, benchId, procedure, reinspection }];
};

/** Shows somebody what the first inspection found, who from then on cannot make the second. */
export const decideSee = (device: Device, person: Person, on: CalendarDate): Decision => {
  const waiting = waitingReinspection(device, on);
  if (waiting === undefined) return refusal('reinspection-not-drawn', { benchId: device.benchId });
  if (waiting.begun !== undefined) return refusal('reinspection-under-way', { inspection: waiting.begun });
  return waiting.knownTo.includes(person.personId)
    ? []
    : [{ type: 'reinspection.seen', reinspection: waiting.reinspection, benchId: device.benchId }];
};
