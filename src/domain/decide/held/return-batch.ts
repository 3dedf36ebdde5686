/** The rules of sending held devices to their manufacturer together, and of what comes back. */
import type { CalendarDate } from '../../brand.ts';
import type { Device } from '../../device.ts';
import type { DomainEvent, Occasion } from '../../event.ts';
import type { Certificate } from '../../held/evidence.ts';
import type { ReturnBatch, ReturnOutcome, Shipment } from '../../held/return-batch.ts';
import type { ModelSheet } from '../../model-sheet.ts';
import { type Refusal, refusal } from '../../refusal.ts';
import type { Reason } from '../../verdict.ts';
import type { Decision } from '../decision.ts';
import { removalOf } from '../device.ts';
import { heldFault, notHere } from './evidence.ts';

export interface BatchDevice {
  readonly device: Device;
  readonly modelSheet: Pick<ModelSheet, 'manufacturer'>;
}

/** A new batch, or more devices in one that was not shipped: all of one manufacturer, each held and lying here. */
export const decideAddToBatch = (batch: ReturnBatch | number, devices: readonly BatchDevice[]): Decision => {
  const number = typeof batch === 'number' ? batch : batch.number;
  if (typeof batch !== 'number' && batch.phase !== 'open') return refusal('batch-shipped', { batch: number });
  const [first] = devices;
  const manufacturer = typeof batch === 'number' ? first?.modelSheet.manufacturer : batch.manufacturer;
  if (manufacturer === undefined) return refusal('batch-empty', { batch: number }, 'benchIds');
  for (const { device, modelSheet } of devices) {
    const { benchId } = device;
    const refused = heldFault(device) ?? cannotTravel(device);
    if (refused !== undefined) return refused;
    if (modelSheet.manufacturer !== manufacturer)
      return refusal('batch-other-maker', { benchId, manufacturer }, 'benchIds');
  }
  return [
    ...(typeof batch === 'number'
      ? [{ type: 'return-batch.opened' as const, batch: number, manufacturer }]
      : []),
    ...devices.map(
      ({ device: { benchId } }): DomainEvent => ({
        type: 'return-batch.device-added',
        batch: number,
        benchId,
      }),
    ),
  ];
};

const cannotTravel = (device: Device): Refusal | undefined => {
  const { benchId, openInspection, release } = device;
  const away = notHere(device);
  if (away !== undefined) return away;
  if (openInspection !== undefined)
    return refusal('checkout-inspection-open', { benchId, inspection: openInspection });
  return release === undefined ? undefined : refusal('release-already', { benchId, on: release.on });
};

export const decideTakeOutOfBatch = (batch: ReturnBatch, device: Device): Decision => {
  if (batch.phase !== 'open') return refusal('batch-shipped', { batch: batch.number });
  const { benchId } = device;
  return device.returnBatch === batch.number
    ? [{ type: 'return-batch.device-taken-out', batch: batch.number, benchId }]
    : refusal('batch-not-in-it', { batch: batch.number, benchId });
};

/** From now on each of them is at the manufacturer. */
export const decideShipBatch = (batch: ReturnBatch, shipment: Shipment, { on }: Occasion): Decision => {
  if (batch.phase !== 'open') return refusal('batch-shipped', { batch: batch.number });
  if (batch.devices.length === 0) return refusal('batch-empty', { batch: batch.number }, 'batch');
  const refused = followUpFault(shipment.followUpOn, on);
  if (refused !== undefined) return refused;
  return [
    { type: 'return-batch.shipped', batch: batch.number, ...shipment },
    ...batch.devices.map(
      ({ benchId }): DomainEvent => ({ type: 'return-batch.device-shipped', batch: batch.number, benchId }),
    ),
  ];
};

export const decideFollowUp = (
  batch: ReturnBatch,
  note: string,
  nextOn: CalendarDate,
  { on }: Occasion,
): Decision => {
  if (batch.phase !== 'shipped') return refusal('batch-not-shipped', { batch: batch.number });
  return (
    followUpFault(nextOn, on) ?? [{ type: 'return-batch.followed-up', batch: batch.number, note, nextOn }]
  );
};

const followUpFault = (nextOn: CalendarDate, on: CalendarDate): Refusal | undefined =>
  nextOn < on ? refusal('batch-follow-up-in-past', { on: nextOn }, 'followUpOn') : undefined;

export interface ComeBack {
  readonly outcome: ReturnOutcome;
  readonly certificate?: Certificate | undefined;
}

/** It is back in quarantine, whatever came with it; what the manufacturer condemned never returns. */
export const decideComeBack = (
  batch: ReturnBatch,
  device: Device,
  { outcome, certificate }: ComeBack,
  { on }: Occasion,
): Decision => {
  const { benchId } = device;
  if (batch.phase !== 'shipped') return refusal('batch-not-shipped', { batch: batch.number });
  if (device.returnBatch !== batch.number || device.standing !== 'at manufacturer')
    return refusal('batch-not-in-it', { batch: batch.number, benchId });
  if (certificate !== undefined && certificate.on > on)
    return refusal('evidence-in-future', { on: certificate.on }, 'certificate');
  if (certificate === undefined && (outcome === 'repaired' || outcome === 'marked again'))
    return refusal('batch-certificate-needed', { benchId }, 'certificate');
  return [
    {
      type: 'return-batch.device-came-back',
      batch: batch.number,
      benchId,
      outcome,
      ...(certificate === undefined ? {} : { certificate }),
    },
    ...(outcome === 'condemned' ? removalOf(device, [condemned]) : []),
  ];
};

const condemned: Reason = {
  key: 'manufacturer.condemned',
  zone: 'whole-device',
  effect: 'remove',
  sentence: { en: 'Condemned by its manufacturer.', es: 'Condenado por su fabricante.' },
};
