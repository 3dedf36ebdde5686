/** How what decides on the due dates of a device changes with an event. */
import type { Device } from './device.ts';
import type { DomainEvent, RecordedEvent } from './event.ts';
import type { Station } from './evolve.ts';

type Event<Type extends DomainEvent['type']> = Extract<DomainEvent, { type: Type }>;

export const withProgram = (
  station: Station,
  { program, effectiveFrom }: Event<'program.adopted'>,
  { on, by, seq }: RecordedEvent,
): Station => {
  const { key, version, title } = program;
  const adoption = { key, version, title, effectiveFrom, on, by, seq };
  return { ...station, program, programs: [...(station.programs ?? []), adoption] };
};

export const withUse = (
  device: Device,
  { typeOfUse, from }: Event<'device.use-set'>,
  { on, by }: RecordedEvent,
): Device => ({ ...device, uses: [...(device.uses ?? []), { typeOfUse, from, on, by }] });

export const withRevalidation = (
  device: Device,
  { type: _type, benchId: _benchId, ...revalidation }: Event<'device.revalidation-recorded'>,
): Device => ({ ...device, revalidation });

export const taggedDueOf = ({ dueOn, due }: Event<'inspection.signed'>): Pick<Device, 'taggedDue'> =>
  dueOn === undefined ? {} : { taggedDue: { on: dueOn, ...(due === undefined ? {} : { what: due.what }) } };

/** A tag that was given out again with an earlier due date is held to it. */
export const heldToReprint = (device: Device, { dueOn }: Event<'tag.issued'>): Device =>
  dueOn === undefined || device.taggedDue === undefined || dueOn >= device.taggedDue.on
    ? device
    : { ...device, taggedDue: { ...device.taggedDue, on: dueOn } };
