/** How a device and an inspection show a correction: the corrected value in its place, and the correction beside it. */
import type { Amendment } from './amendment.ts';
import type { Device } from './device.ts';
import type { DomainEvent, RecordedEvent } from './event.ts';
import type { Inspection } from './inspection.ts';
import type { MarkingElement } from './marking.ts';

type Amended = Extract<DomainEvent, { type: 'record.amended' }>;

const amendmentOf = (
  { seq, on, by }: RecordedEvent,
  { amends, correction, because }: Amended,
): Amendment => ({
  seq,
  amends,
  on,
  by,
  correction,
  because,
});

/** A tag that says the old serial number is out of date: it waits to be printed and scanned once more. */
export const amendedDevice = (device: Device, recorded: RecordedEvent, event: Amended): Device => {
  const amendments = [...(device.amendments ?? []), amendmentOf(recorded, event)];
  const { correction } = event;
  switch (correction.field) {
    case 'serial': {
      const { was, now } = correction;
      return { ...withWords(withTagToRenew(device), 'serialNumber', was, now), serial: now, amendments };
    }
    case 'dateOfManufacture': {
      const { was, now } = correction;
      return { ...withWords(device, 'dateOfManufacture', was, now), dateOfManufacture: now, amendments };
    }
    case 'modelSheet':
      return { ...withTagToRenew(device), modelSheetId: correction.now, amendments };
    case 'regularUser': {
      const { regularUserId: _was, ...rest } = device;
      return correction.now === undefined
        ? { ...rest, amendments }
        : { ...rest, regularUserId: correction.now, amendments };
    }
    case 'answer':
    case 'name':
      return device;
  }
};

/** The words of the marking follow where they said the same. */
const withWords = (device: Device, element: MarkingElement, was: string, now: string): Device => ({
  ...device,
  marking: device.marking.map((entry) =>
    entry.element === element && entry.text === was ? { ...entry, text: now } : entry,
  ),
});

const withTagToRenew = (device: Device): Device => {
  if (device.currentTag === undefined) return device;
  const { provedOn: _proved, ...currentTag } = device.currentTag;
  return { ...device, currentTag };
};

/** Who answered, and when, stays: the amendment says who corrected it. */
export const amendedInspection = (
  inspection: Inspection,
  recorded: RecordedEvent,
  event: Amended,
): Inspection => {
  const { correction } = event;
  if (correction.field !== 'answer') return inspection;
  const answered = inspection.answers[correction.check];
  if (answered === undefined) return inspection;
  return {
    ...inspection,
    answers: { ...inspection.answers, [correction.check]: { ...answered, answer: correction.now } },
    amendments: [...(inspection.amendments ?? []), amendmentOf(recorded, event)],
  };
};
