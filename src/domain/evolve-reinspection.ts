/** How being drawn for a blind re-inspection changes a device, and what ends it. */
import type { Device } from './device.ts';
import type { DomainEvent, RecordedEvent } from './event.ts';
import type { Reinspection } from './reinspection/reinspection.ts';

/** After any of these the device is not the one that the first inspection saw, or is not here to be inspected. */
const ends: ReadonlySet<DomainEvent['type']> = new Set([
  'inspection.signed',
  'device.removed',
  'device.released',
  'device.scrapped',
  'device.checked-out',
  'device.transferred',
  'device.lost',
  'device.marking-read',
  'device.revalidation-recorded',
  'identity.taken',
  'fall-case.device-joined',
  'return-batch.device-shipped',
]);

/** `device` has evolved with the event in every other way. */
export const withReinspection = (device: Device, { event, by }: RecordedEvent): Device => {
  if (event.type === 'reinspection.drawn') {
    const { reinspection, first, until, knownTo } = event;
    return { ...device, reinspection: { reinspection, first, until, knownTo } };
  }
  if (device.reinspection === undefined) return device;
  const { begun: _begun, ...waiting } = device.reinspection;
  if (ends.has(event.type)) {
    const { reinspection: _ended, ...rest } = device;
    return rest;
  }
  switch (event.type) {
    case 'reinspection.seen':
      return {
        ...device,
        reinspection: { ...device.reinspection, knownTo: [...device.reinspection.knownTo, by] },
      };
    case 'inspection.started':
      return event.reinspection === undefined
        ? device
        : { ...device, reinspection: { ...waiting, begun: event.inspection } };
    case 'inspection.abandoned':
      return { ...device, reinspection: waiting };
    default:
      return device;
  }
};

export const drawnReinspection = (
  { reinspection, benchId, first, until }: Extract<DomainEvent, { type: 'reinspection.drawn' }>,
  { on, by }: RecordedEvent,
): Reinspection => ({
  kind: 'reinspection',
  number: reinspection,
  phase: 'drawn',
  benchId,
  drawnBy: by,
  drawnOn: on,
  until,
  first,
});

export const evolveReinspection = (file: Reinspection, { event }: RecordedEvent): Reinspection => {
  switch (event.type) {
    case 'inspection.started':
      return { ...file, second: event.inspection };
    case 'inspection.signed':
      return { ...file, phase: 'signed', second: event.inspection };
    default:
      return file;
  }
};
