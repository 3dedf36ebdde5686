/** From brightness to how much each sample speaks for ink, whatever the light, the stains and the fading. */
import { boxBlurred, type Field } from '../field.ts';

/** Ink and bare material as normal deviates of the share of ink, with room for what wear and dirt do to either. */
const spreadOfShare = 0.22;
const wornAway = 0.2;
const dirty = 0.08;
const anyShare = 1 / 1.6;

/** The log likelihood of ink over bare material in each sample; `reach` is about the height of a letter in samples. */
export const inkEvidence = (strip: Field, reach: number): Field => {
  const white = bareMaterial(strip, reach);
  const darkening = strip.values.map((value, at) => 1 - value / Math.max(1, white.values[at] ?? 1));
  const sorted = darkening.slice().sort();
  const ink = Math.max(0.04, sorted[Math.floor(0.9 * (sorted.length - 1))] ?? 0);
  return { ...strip, values: darkening.map((value) => likelihoodOf(value / ink)) };
};

const likelihoodOf = (share: number): number => {
  const near = (middle: number): number =>
    Math.exp(-((share - middle) ** 2) / (2 * spreadOfShare ** 2)) / (spreadOfShare * Math.sqrt(2 * Math.PI));
  const inked = (1 - wornAway) * (share > 1 ? near(share) * 0.8 : near(1)) + wornAway * anyShare;
  const bare = (1 - dirty) * (share < 0 ? near(share) : near(0)) + dirty * anyShare;
  return Math.log(inked / bare);
};

/** The brightness of the material: in each window the 85th percentile, smoothed between windows. */
const bareMaterial = (strip: Field, reach: number): Field => {
  const { width, height, values } = strip;
  const step = Math.max(2, Math.round(reach / 2));
  const white = new Float32Array(values.length);
  for (let top = 0; top < height; top += step)
    for (let left = 0; left < width; left += step) {
      const around: number[] = [];
      for (let y = Math.max(0, top - reach / 2); y < Math.min(height, top + step + reach / 2); y += 2)
        for (let x = Math.max(0, left - reach / 2); x < Math.min(width, left + step + reach / 2); x += 2)
          around.push(values[Math.floor(y) * width + Math.floor(x)] ?? 0);
      const sorted = Float32Array.from(around).sort();
      const level = sorted[Math.floor(0.85 * (sorted.length - 1))] ?? 0;
      for (let y = top; y < Math.min(height, top + step); y += 1)
        white.fill(level, y * width + left, y * width + Math.min(width, left + step));
    }
  return boxBlurred({ width, height, values: white }, step);
};
