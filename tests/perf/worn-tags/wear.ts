/** Wears a clean tag and photographs it: a pure function of the tag, the level and the seed. */
import type { Picture } from '../../../src/tags/read/picture.ts';
import { exposed, lit } from './camera.ts';
import { printOf } from './print.ts';
import { randomOf } from './random.ts';
import { abraded, faded, scratched, soiled, torn } from './surface-wear.ts';
import { seen } from './view.ts';
import { drawAmounts, severityOf, type WearAmounts, type WearLevel } from './wear-amounts.ts';

/** Clean tags are rendered at 300 dots per inch. */
export const cleanDotsPerMm = 300 / 25.4;

/**
 * A photograph has 8 to 12 dots for each millimetre of the tag: a 12-megapixel phone camera, 4,000 dots wide at 69° (26 mm
 * lens for 35 mm film), sees 412 mm at a distance of 300 mm, so 9.7 dots a millimetre; some crop, some stand back.
 */
const photographDotsPerMm = [8, 12] as const;

/** The quality at which the photograph of this seed is stored as JPEG; `wear` itself does not compress. */
export const jpegQualityOf = (level: WearLevel, seed: number): number =>
  Math.round(amountsOf(severityOf[level], seed).jpegQuality);

/** `clean` is a raster at 300 dots per inch; the photograph has surroundings and its own size. */
export const wear = (clean: Picture, level: WearLevel, seed: number): Picture =>
  photographOf(clean, amountsOf(severityOf[level], seed), seed);

export const amountsOf = (severity: number, seed: number): WearAmounts =>
  drawAmounts(severity, randomOf(seed, 'amounts'));

/** With amounts of one's own choice, for the tests and for tuning. */
export const photographOf = (clean: Picture, amounts: WearAmounts, seed: number): Picture => {
  const stream = (purpose: string) => randomOf(seed, purpose);
  const fresh = printOf(clean, cleanDotsPerMm);
  const pale = faded(
    fresh,
    { inkLeft: amounts.inkLeft, unevenness: amounts.fadingUnevenness },
    stream('fading'),
  );
  const rubbed = abraded(
    pale,
    { share: amounts.abradedShare, depth: amounts.abrasionDepth, grainMm: amounts.abrasionGrainMm },
    stream('abrasion'),
  );
  const scored = scratched(
    rubbed,
    {
      acrossBars: Math.round(amounts.scratchesAcrossBars),
      alongBars: Math.round(amounts.scratchesAlongBars),
      widestMm: amounts.scratchWidestMm,
      longestMm: amounts.scratchLongestMm,
    },
    stream('scratches'),
  );
  const dirty = soiled(
    scored,
    {
      stains: Math.round(amounts.stains),
      stainDepth: amounts.stainDepth,
      grease: amounts.grease,
      grains: amounts.grains,
    },
    stream('soiling'),
  );
  const worn = torn(dirty, amounts.tearMm, stream('tear'));

  const camera = stream('camera');
  const dotsPerMm = camera.between(...photographDotsPerMm);
  const scene = seen(
    worn,
    {
      dotsPerMm,
      wrapDegrees: amounts.wrapDegrees,
      pitchDegrees: amounts.pitchDegrees,
      yawDegrees: amounts.yawDegrees,
      rollDegrees: amounts.rollDegrees,
      marginMm: camera.between(5, 15),
    },
    stream('surroundings'),
  );
  return exposed(
    lit(scene, amounts, stream('light')),
    {
      defocusDots: amounts.defocusMm * dotsPerMm,
      motionDots: amounts.motionMm * dotsPerMm,
      noise: amounts.noise,
    },
    stream('exposure'),
  );
};
