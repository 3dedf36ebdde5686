/** Keeping a picture with the record: of a device, or of what was seen at a check of its inspection. */
import type { Device } from '../device.ts';
import type { Inspection } from '../inspection.ts';
import type { FindingPicture, KeptPicture } from '../picture.ts';
import { applicableChecks } from '../procedure.ts';
import { refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';
import { factsOf, type InspectionCase, notOpen } from './inspection.ts';

/** Any device may have one, also one that is scrapped. Nothing happens where the same picture is `kept` for it already. */
export const decideKeepPicture = (
  { benchId }: Device,
  picture: KeptPicture,
  kept: readonly KeptPicture[],
): Decision =>
  kept.some(({ sha256, of }) => sha256 === picture.sha256 && of === picture.of)
    ? []
    : [{ type: 'device.picture-kept', benchId, ...picture }];

/** Pictures of one check, at most: enough for a lifeline full of findings. */
export const mostPicturesOfCheck = 24;

/**
 * Only while the inspection is open, and only at a check that applies to the device. Nothing happens where the same picture
 * is `kept` for that check already.
 */
export const decideKeepFindingPicture = (
  inspection: Inspection,
  { device, modelSheet, procedure }: InspectionCase,
  picture: FindingPicture,
  kept: readonly FindingPicture[],
): Decision => {
  if (inspection.state !== 'open') return notOpen(inspection);
  const { check } = picture;
  if (!applicableChecks(procedure, factsOf(modelSheet)).some(({ key }) => key === check))
    return refusal('check-unknown', { check }, 'check');
  const ofCheck = kept.filter((other) => other.check === check);
  if (ofCheck.some(({ sha256 }) => sha256 === picture.sha256)) return [];
  return ofCheck.length < mostPicturesOfCheck
    ? [
        {
          type: 'finding.picture-kept',
          inspection: inspection.inspection,
          benchId: device.benchId,
          ...picture,
        },
      ]
    : refusal('pictures-too-many', { check, most: mostPicturesOfCheck }, 'picture');
};
