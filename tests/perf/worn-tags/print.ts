/** The printed face of a tag, on which wear works: ink that goes, a material that is soiled or torn away. */
import type { Picture } from '../../../src/tags/read/picture.ts';

export interface Print {
  readonly width: number;
  readonly height: number;
  readonly dotsPerMm: number;
  /** 0 none to 1 full black. */
  readonly ink: Float32Array;
  /** What the bare material gives back of the light, 0 to 1, dirt included. */
  readonly material: Float32Array;
  /** 1 where the tag is still there, 0 where it is torn away. */
  readonly whole: Uint8Array;
}

/** Of a clean raster at `dotsPerMm`. */
export const printOf = ({ width, height, luminance }: Picture, dotsPerMm: number): Print => {
  const ink = new Float32Array(luminance.length);
  for (let index = 0; index < ink.length; index += 1) ink[index] = 1 - (luminance[index] ?? 255) / 255;
  return {
    width,
    height,
    dotsPerMm,
    ink,
    material: new Float32Array(width * height).fill(1),
    whole: new Uint8Array(width * height).fill(1),
  };
};

/** Black print on a label gives back about a twentieth of the light; common practice, no source. */
const blackest = 0.05;

export const reflectanceOf = ({ ink, material }: Print): Float32Array =>
  material.map((bare, index) => bare * (1 - (1 - blackest) * (ink[index] ?? 0)));
