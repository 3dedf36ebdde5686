/** What happens to the face of a tag in use: it fades, is rubbed, scratched, soiled and torn. Lengths in millimetres. */
import { noiseField, quantile, ramp } from './field.ts';
import type { Print } from './print.ts';
import type { Random } from './random.ts';

export interface Fading {
  /** Share of the ink that is left on average. */
  readonly inkLeft: number;
  /** How far the share swings to either side of it across the tag, in patches of about 25 mm. */
  readonly unevenness: number;
}

/** Sun and solvent take the ink, more in one place than in another. */
export const faded = (print: Print, { inkLeft, unevenness }: Fading, random: Random): Print => {
  const patches = noiseField(print.width, print.height, 25 * print.dotsPerMm, 2, random).values;
  return {
    ...print,
    ink: print.ink.map((ink, index) => {
      const left = inkLeft + unevenness * 2 * ((patches[index] ?? 0.5) - 0.5);
      return ink * Math.min(1, Math.max(0.02, left));
    }),
  };
};

export interface Abrasion {
  /** Share of the face that is rubbed. */
  readonly share: number;
  /** Share of the ink that goes where it is rubbed hardest. */
  readonly depth: number;
  /** Size of the rubbed blobs. */
  readonly grainMm: number;
}

/** Rubbing on steel and concrete: ragged blobs in which the ink thins out or is gone. */
export const abraded = (print: Print, { share, depth, grainMm }: Abrasion, random: Random): Print => {
  if (share <= 0) return print;
  const blobs = noiseField(print.width, print.height, grainMm * print.dotsPerMm, 4, random);
  const grit = noiseField(print.width, print.height, 0.3 * print.dotsPerMm, 1, random).values;
  const from = quantile(blobs, 1 - share);
  return {
    ...print,
    ink: print.ink.map((ink, index) => {
      const hard = ramp(blobs.values[index] ?? 0, from, from + 0.06);
      return ink * (1 - Math.min(1, hard * depth * (0.6 + 0.8 * (grit[index] ?? 0))));
    }),
  };
};

export interface Scratches {
  /** Within 12° of the line of the text, so across the bars of a linear symbol. */
  readonly acrossBars: number;
  /** Within 12° of the bars, the ones that take whole bars away. */
  readonly alongBars: number;
  readonly widestMm: number;
  readonly longestMm: number;
}

const narrowestScratchMm = 0.08;
const steepest = (12 * Math.PI) / 180;

/** Two in three bare the white material; the third is filled with dirt and dark. */
export const scratched = (
  print: Print,
  { acrossBars, alongBars, widestMm, longestMm }: Scratches,
  random: Random,
): Print => {
  const ink = print.ink.slice();
  const material = print.material.slice();
  const draw = (direction: number): void => {
    const angle = direction + random.between(-steepest, steepest);
    const lengthMm = random.between(0.2, 1) * longestMm;
    const widthMm = random.between(narrowestScratchMm, widestMm);
    const depth = random.between(0.5, 1);
    const dirty = random.chance(1 / 3);
    const bend = random.between(-0.004, 0.004);
    const x = random.between(0, print.width);
    const y = random.between(0, print.height);
    stroke(print, { x, y, angle, bend, lengthMm, widthMm }, (index, cover) => {
      ink[index] = (ink[index] ?? 0) * (1 - depth * cover);
      if (dirty) material[index] = (material[index] ?? 1) * (1 - 0.7 * depth * cover);
    });
  };
  for (let count = 0; count < acrossBars; count += 1) draw(0);
  for (let count = 0; count < alongBars; count += 1) draw(Math.PI / 2);
  return { ...print, ink, material };
};

interface Stroke {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  /** Change of direction in radians for each millimetre. */
  readonly bend: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Calls `touch` once for each dot under the stroke, with the share of its full depth; it thins out at both ends. */
const stroke = (
  { width, height, dotsPerMm }: Print,
  { x, y, angle, bend, lengthMm, widthMm }: Stroke,
  touch: (index: number, cover: number) => void,
): void => {
  const half = (widthMm * dotsPerMm) / 2;
  const steps = Math.ceil(lengthMm * dotsPerMm * 2);
  const covers = new Map<number, number>();
  let [atX, atY, heading] = [x, y, angle];
  for (let step = 0; step <= steps; step += 1) {
    const end = ramp(Math.min(step, steps - step), 0, steps / 10);
    const reach = half * (0.4 + 0.6 * end);
    for (let dotY = Math.floor(atY - reach); dotY <= atY + reach + 1; dotY += 1)
      for (let dotX = Math.floor(atX - reach); dotX <= atX + reach + 1; dotX += 1) {
        if (dotX < 0 || dotY < 0 || dotX >= width || dotY >= height) continue;
        const cover = Math.min(1, Math.max(0, reach + 0.5 - Math.hypot(dotX - atX, dotY - atY)));
        const index = dotY * width + dotX;
        if (cover > (covers.get(index) ?? 0)) covers.set(index, cover);
      }
    atX += Math.cos(heading) / 2;
    atY += Math.sin(heading) / 2;
    heading += bend / dotsPerMm / 2;
  }
  for (const [index, cover] of covers) touch(index, cover);
};

export interface Soiling {
  /** Rust, oil, paint: round stains of 4 to 30 mm. */
  readonly stains: number;
  /** Share of the light that the middle of a stain takes away. */
  readonly stainDepth: number;
  /** Share of the light that a film of grease takes away at its thickest; it lies in streaks. */
  readonly grease: number;
  /** Share of the face under grains of dirt of about 0.3 mm. */
  readonly grains: number;
}

/** How far the ragged rim of a stain reaches, in radii. */
const farthest = 1.25;

/** Dirt lies over ink and bare material alike. */
export const soiled = (
  print: Print,
  { stains, stainDepth, grease, grains }: Soiling,
  random: Random,
): Print => {
  const { width, height, dotsPerMm } = print;
  const material = print.material.slice();
  const film = noiseField(width, height, 12 * dotsPerMm, 3, random).values;
  const dirt = noiseField(width, height, 0.3 * dotsPerMm, 1, random);
  const drifts = noiseField(width, height, 15 * dotsPerMm, 2, random).values;
  const spots = Array.from({ length: stains }, () => ({
    x: random.between(0, width),
    y: random.between(0, height),
    radius: random.between(2, 15) * dotsPerMm,
    depth: stainDepth * random.between(0.6, 1),
  }));
  const ragged = noiseField(width, height, 3 * dotsPerMm, 3, random).values;
  const grainFrom = quantile(dirt, 1 - grains);
  for (let index = 0; index < material.length; index += 1) {
    const x = index % width;
    const y = Math.floor(index / width);
    let left = 1 - grease * ramp(film[index] ?? 0, 0.3, 0.8);
    if (grains > 0)
      left *=
        1 -
        0.75 *
          ramp((dirt.values[index] ?? 0) + 0.3 * ((drifts[index] ?? 0) - 0.5), grainFrom, grainFrom + 0.1);
    for (const { x: spotX, y: spotY, radius, depth } of spots) {
      const reach = farthest * radius;
      if (Math.abs(x - spotX) > reach || Math.abs(y - spotY) > reach) continue;
      const away =
        Math.sqrt((x - spotX) ** 2 + (y - spotY) ** 2) / radius + 0.5 * ((ragged[index] ?? 0) - 0.5);
      if (away < 1) left *= 1 - depth * ramp(1 - away, 0, 0.25);
    }
    material[index] = (material[index] ?? 1) * left;
  }
  return { ...print, material };
};

/** A corner or an end torn off: the ragged edge reaches `depthMm` into the tag from one of its corners. */
export const torn = (print: Print, depthMm: number, random: Random): Print => {
  if (depthMm <= 0) return print;
  const { width, height, dotsPerMm } = print;
  const ragged = noiseField(width, height, 4 * dotsPerMm, 4, random).values;
  const lean = random.between(0.2, 1.2);
  const fromRight = random.chance(0.5);
  const fromBottom = random.chance(0.5);
  const whole = print.whole.map((there, index) => {
    const x = index % width;
    const y = Math.floor(index / width);
    const inwardX = (fromRight ? width - x : x) / dotsPerMm;
    const inwardY = (fromBottom ? height - y : y) / dotsPerMm;
    const depth = inwardX * Math.cos(lean) + inwardY * Math.sin(lean);
    return depth < depthMm * (0.8 + 0.4 * (ragged[index] ?? 0)) ? 0 : there;
  });
  return { ...print, whole };
};
