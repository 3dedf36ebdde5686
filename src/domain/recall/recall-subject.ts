/** What is known of a device that a notice may speak of: by the register, and where that is presumed, by what was seen. */
import type { Device } from '../device.ts';
import type { Observation } from '../identity/observation.ts';
import type { MarkingElement } from '../marking.ts';
import type { ModelSheet } from '../model-sheet.ts';

/** What can be read: `?` is one character that cannot be, `*` a run of them, and nothing is a run too. */
export interface SeenMarking {
  readonly manufacturer: string;
  readonly model: string;
  /** The maker's own number of the model, which a notice may name instead. */
  readonly reference?: string | undefined;
  readonly serial: string;
  readonly dateOfManufacture: string;
}

export interface RecallSubject {
  /** Absent where it is a device that is in no register. */
  readonly asRegistered?: SeenMarking | undefined;
  /** Present where the device may be another one than the register says: what was seen on it. */
  readonly asSeen?: SeenMarking | undefined;
  /** Only a list says the serial number: nobody has read it on the device. */
  readonly serialNotRead: boolean;
}

type KnownDevice = Pick<
  Device,
  'serial' | 'dateOfManufacture' | 'marking' | 'presumedIdentity' | 'lastInspection'
>;
type KnownSheet = Pick<ModelSheet, 'manufacturer' | 'model' | 'manufacturerReference'>;

/**
 * What the marking does not say legibly is in doubt, whatever the register says: such a device is out of service, and the
 * register may hold what somebody took it for. Where signs that cannot be read are written down, the others count.
 * `observation` is that of the case in which two people presumed who the device is.
 */
export const subjectOf = (
  device: KnownDevice,
  sheet: KnownSheet,
  observation: Observation | undefined,
): RecallSubject => {
  const lost = (element: MarkingElement): boolean =>
    device.marking.some((entry) => entry.element === element && isLost(entry.state));
  const known = (element: MarkingElement, text: string): string =>
    lost(element) && !/[?*]/.test(text) ? '*' : text;
  const asRegistered: SeenMarking = {
    manufacturer: known('manufacturer', sheet.manufacturer),
    model: known('model', sheet.model),
    ...(sheet.manufacturerReference === undefined || lost('model')
      ? {}
      : { reference: sheet.manufacturerReference }),
    serial: known('serialNumber', device.serial),
    dateOfManufacture: known('dateOfManufacture', device.dateOfManufacture),
  };
  const wasInspected = device.lastInspection?.verdict === 'pass';
  const isFromList = device.marking.some(
    ({ element, state }) => element === 'serialNumber' && state === 'not read',
  );
  return {
    asRegistered,
    ...(device.presumedIdentity === undefined ? {} : { asSeen: seenIn(observation ?? {}) }),
    serialNotRead: isFromList && !wasInspected,
  };
};

const isLost = (state: Device['marking'][number]['state']): boolean =>
  state === 'illegible' || state === 'missing';

/** A device that is in no register, or that nobody has recognised yet: nothing but what was seen. */
export const seenIn = ({ manufacturer, model, serial, dateOfManufacture }: Observation): SeenMarking => ({
  manufacturer: manufacturer ?? '*',
  model: model ?? '*',
  serial: serial ?? '*',
  dateOfManufacture: dateOfManufacture ?? '*',
});
