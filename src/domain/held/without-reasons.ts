/** Takes reasons off a device, and keeps what was recorded for the others with them: evidence names reasons by their place. */
import type { Device } from '../device.ts';

export const withoutReasons = (device: Device, keys: readonly string[]): Device => {
  const isKept = device.reasons.map(({ key }) => !keys.includes(key));
  if (isKept.every((kept) => kept)) return device;
  /** The place of the reason once the others are gone, from 1 on; `undefined` where it is gone itself. */
  const placeOf = (place: number): number | undefined =>
    isKept[place - 1] === true ? isKept.slice(0, place).filter((kept) => kept).length : undefined;
  const { evidence, fallCases } = device;
  return {
    ...device,
    reasons: device.reasons.filter((_, index) => isKept[index]),
    ...(evidence === undefined
      ? {}
      : {
          evidence: evidence.map((entry) => ({
            ...entry,
            covers: entry.covers.map(placeOf).filter((place) => place !== undefined),
          })),
        }),
    ...(fallCases === undefined
      ? {}
      : {
          fallCases: fallCases.map(({ covers, ...each }) => ({
            ...each,
            ...(covers === undefined
              ? {}
              : { covers: isKept.slice(0, covers).filter((kept) => kept).length }),
          })),
        }),
  };
};
