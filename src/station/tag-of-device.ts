/** The tag that belongs on a device now, from the record, and the tag as a printed thing. */
import type { Device } from '../domain/device.ts';
import type { Station } from '../domain/evolve.ts';
import { askedBeforeReturn, shortWords } from '../domain/held/asked-before-return.ts';
import type { ReleaseRules } from '../domain/held/release-rules.ts';
import { lengthText } from '../domain/length.ts';
import type { Program } from '../domain/program.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import type { QuarantineTag, TagContent, TagKind } from '../domain/tag-content.ts';
import type { DeviceRow } from '../ledger/ledger.ts';
import type { Sealer } from './seal.ts';

/** What a tag says besides the state of its device. */
export interface TagPlace {
  readonly station: Station;
  readonly program: Program;
  readonly releaseRules: ReleaseRules;
  readonly name: (personId: string) => string;
  readonly sealer: Sealer;
}

/**
 * A status tag exists only for the latest passing inspection of a device in service, a quarantine tag only for a device
 * out of service; an ID label says nothing of either, and is not printed while the identity of the device is only presumed.
 */
export const tagOfDevice = (
  { device, modelSheet }: DeviceRow,
  kind: TagKind,
  place: TagPlace,
): TagContent | Refusal => {
  const { station, program, name, sealer } = place;
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
      ...returnOf(device, place),
    };
  }
  return refusedKind(device, kind);
};

/** The evidence that its own reasons ask for, then what the program asks of every device; neither where it cannot return. */
const returnOf = (
  { reasons }: Device,
  { program, releaseRules }: TagPlace,
): Pick<QuarantineTag, 'evidence' | 'beforeReturn'> => {
  const asked = askedBeforeReturn(reasons, { rules: releaseRules, program });
  const final = asked.filter(({ kinds }) => kinds.some(({ how }) => how === 'never'));
  const shown = final.length > 0 ? final : asked;
  return {
    evidence: shown.map(({ reasons, kinds }) => ({ reasons: [...reasons], anyOf: kinds.map(shortWords) })),
    beforeReturn: final.length > 0 ? [] : [...program.beforeReturn],
  };
};

const refusedKind = (device: Device, kind: TagKind): Refusal =>
  refusal('tag-kind-refused', { benchId: device.benchId, standing: device.standing, kind }, 'kind');
