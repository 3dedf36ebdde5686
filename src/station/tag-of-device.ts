/** The tag that belongs on a device now, from the record, and the tag as a printed thing. */
import type { Device } from '../domain/device.ts';
import type { Station } from '../domain/evolve.ts';
import { lengthText } from '../domain/length.ts';
import type { Program } from '../domain/program.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import type { TagContent, TagKind } from '../domain/tag-content.ts';
import type { DeviceRow } from '../ledger/ledger.ts';
import type { Sealer } from './seal.ts';

/**
 * A status tag exists only for the latest passing inspection of a device in service, a quarantine tag only for a device
 * out of service; an ID label says nothing of either, and is not printed while the identity of the device is only presumed.
 */
export const tagOfDevice = (
  { device, modelSheet }: DeviceRow,
  kind: TagKind,
  station: Station,
  program: Program,
  name: (personId: string) => string,
  sealer: Sealer,
): TagContent | Refusal => {
  if (kind === 'id') {
    return device.presumedIdentity === undefined
      ? { kind, benchId: device.benchId }
      : refusal('identity-presumed-no-label', { benchId: device.benchId }, 'kind');
  }
  const tag = device.currentTag;
  if (tag === undefined) return refusal('no-tag', { benchId: device.benchId });
  const identified = {
    benchId: device.benchId,
    tagNumber: tag.tagNumber,
    manufacturer: modelSheet.manufacturer,
    model: modelSheet.model,
    serial: device.serial,
    ratedLength: lengthText(modelSheet.ratedLengthM, station.lengthUnit, 'en'),
    station: station.name,
    languages: [...program.tagLanguages],
  };
  const { lastInspection, dueOn, dueWhat } = device;
  if (kind === 'status' && tag.kind === 'status' && lastInspection !== undefined && dueOn !== undefined) {
    const claim = {
      kind,
      benchId: device.benchId,
      tagNumber: tag.tagNumber,
      inspectedOn: lastInspection.on,
      dueOn,
    };
    return {
      ...identified,
      ...claim,
      ...(dueWhat === undefined || dueWhat === 'documented inspection' ? {} : { dueFor: dueWhat }),
      inspectorMark: name(lastInspection.by),
      seal: sealer.seal(claim),
    };
  }
  if (kind === 'quarantine' && tag.kind === 'quarantine') {
    const claim = { kind, benchId: device.benchId, tagNumber: tag.tagNumber, removedOn: tag.issuedOn };
    return {
      ...identified,
      ...claim,
      seal: sealer.seal(claim),
      removedBy: name(device.removedBy ?? ''),
      reasons: device.reasons.map(({ zone, sentence }) => ({ zone, sentence })),
      keptAt: program.quarantinePlace,
      beforeReturn: [...program.beforeReturn],
    };
  }
  return refusedKind(device, kind);
};

const refusedKind = (device: Device, kind: TagKind): Refusal =>
  refusal('tag-kind-refused', { benchId: device.benchId, standing: device.standing, kind }, 'kind');
