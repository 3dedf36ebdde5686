/** Keeping a picture with the record of a device. */
import type { Device } from '../device.ts';
import type { KeptPicture } from '../picture.ts';
import type { Decision } from './decision.ts';

/** Any device may have one, also one that is scrapped. Nothing happens where the same picture is `kept` for it already. */
export const decideKeepPicture = (
  { benchId }: Device,
  picture: KeptPicture,
  kept: readonly KeptPicture[],
): Decision =>
  kept.some(({ sha256, of }) => sha256 === picture.sha256 && of === picture.of)
    ? []
    : [{ type: 'device.picture-kept', benchId, ...picture }];
