/** The bars of a place as one series of darkness across them, made from every row, each part of a row weighed by how well it agrees. */
import { boxBlurred, type Field, sampledFrame, valueAt } from '../field.ts';
import type { BarsPlace } from './locate-bars.ts';

export interface BarsProfile {
  /** About 1 in a wide bar and −1 in a wide space, sample by sample across the bars. */
  readonly darkness: Float32Array;
  /** One over the variance of the noise in each sample; 0 where nothing is known. */
  readonly precision: Float32Array;
  /** Bands along the bars, and how strongly each carries the same bars, 0 to 1. */
  readonly bandWeights: readonly number[];
  /** From sample and row (0 in the middle) to the picture. */
  readonly at: (sample: number, row: number) => { readonly x: number; readonly y: number };
  readonly rows: number;
}

const coarseBands = 16;
const fineBands = 24;
const shearSteps = 24;
/** Slope of the bars against the place, as far as a symbol seen aslant is out of square (about 7°). */
const steepestShear = 0.12;
const segments = 6;

/** `module` is about the width of one module in dots. */
export const profileOf = (field: Field, place: BarsPlace, module: number): BarsProfile => {
  const length = Math.round(place.length);
  const rows = Math.max(coarseBands, Math.round(place.height));
  const [cosine, sine] = [Math.cos(place.angle), Math.sin(place.angle)];
  const frame = {
    x: place.x - (cosine * (length - 1)) / 2 + (sine * (rows - 1)) / 2,
    y: place.y - (sine * (length - 1)) / 2 - (cosine * (rows - 1)) / 2,
    alongX: cosine,
    alongY: sine,
    downX: -sine,
    downY: cosine,
  };
  const coarse = withoutMean(bandsOf(sampledFrame(field, frame, length, rows), coarseBands), module);
  const shear = shearOf(coarse, rows / coarseBands);
  const at = (sample: number, row: number) => {
    const shifted = sample + (shear.middle + shear.slope * (sample / length - 0.5)) * row - (length - 1) / 2;
    return { x: place.x + shifted * cosine - row * sine, y: place.y + shifted * sine + row * cosine };
  };
  const straight = new Float32Array(length * rows);
  for (let row = 0; row < rows; row += 1) {
    const down = row - (rows - 1) / 2;
    for (let sample = 0; sample < length; sample += 1) {
      const { x, y } = at(sample, down);
      straight[row * length + sample] = valueAt(field, x, y);
    }
  }
  const bands = withoutMean(
    bandsOf({ width: length, height: rows, values: straight }, Math.min(fineBands, rows)),
    module,
  );
  return { ...combined(bands, module), at, rows };
};

/** Means of so many groups of rows. */
const bandsOf = ({ width, height, values }: Field, count: number): Field => {
  const bands = new Float32Array(width * count);
  const rows = new Float32Array(count);
  for (let y = 0; y < height; y += 1) {
    const band = Math.floor((y * count) / height);
    rows[band] = (rows[band] ?? 0) + 1;
    for (let x = 0; x < width; x += 1) {
      const to = band * width + x;
      bands[to] = (bands[to] ?? 0) + (values[y * width + x] ?? 0);
    }
  }
  return { width, height: count, values: bands.map((sum, at) => sum / (rows[Math.floor(at / width)] ?? 1)) };
};

/** Less the mean over about thirty modules, so that shadow and stains of that size go. */
const withoutMean = (bands: Field, module: number): Field => {
  const mean = boxBlurred(bands, Math.round(15 * module), 0).values;
  return { ...bands, values: bands.values.map((value, at) => value - (mean[at] ?? 0)) };
};

/** The slope of the bars in the middle and how it grows along the symbol, by where the sum of all bands is crispest. */
const shearOf = (bands: Field, rowsPerBand: number): { middle: number; slope: number } => {
  const { width, height, values } = bands;
  const span = Math.floor(width / segments);
  const fits: { at: number; shear: number; weight: number }[] = [];
  for (let segment = 0; segment < segments; segment += 1) {
    const from = segment * span;
    const crispness = Array.from({ length: 2 * shearSteps + 1 }, (_none, step) => {
      const shear = ((step - shearSteps) / shearSteps) * steepestShear;
      const sum = new Float32Array(span);
      for (let band = 0; band < height; band += 1) {
        const shift = shear * (band - (height - 1) / 2) * rowsPerBand;
        const whole = Math.floor(shift);
        const part = shift - whole;
        for (let x = 0; x < span; x += 1) {
          const start = from + x + whole;
          if (start < 0 || start + 1 >= width) continue;
          const at = band * width + start;
          sum[x] = (sum[x] ?? 0) + (values[at] ?? 0) * (1 - part) + (values[at + 1] ?? 0) * part;
        }
      }
      let energy = 0;
      for (let x = 2; x < span; x += 1) energy += ((sum[x] ?? 0) - (sum[x - 2] ?? 0)) ** 2;
      return energy;
    });
    const best = crispness.indexOf(Math.max(...crispness));
    const usual = crispness.reduce((sum, energy) => sum + energy, 0) / crispness.length;
    const weight = Math.max(0, (crispness[best] ?? 0) - 1.3 * usual);
    if (best > 0 && best < 2 * shearSteps)
      fits.push({
        at: (segment + 0.5) / segments - 0.5,
        shear: ((best - shearSteps) / shearSteps) * steepestShear,
        weight,
      });
  }
  return lineThrough(fits);
};

/** Weighted least squares; a slope only where at least three segments tell. */
const lineThrough = (fits: readonly { at: number; shear: number; weight: number }[]) => {
  const sum = (of: (fit: { at: number; shear: number; weight: number }) => number): number =>
    fits.reduce((total, fit) => total + of(fit), 0);
  const weight = sum((fit) => fit.weight);
  if (weight <= 0) return { middle: 0, slope: 0 };
  const meanAt = sum((fit) => fit.weight * fit.at) / weight;
  const meanShear = sum((fit) => fit.weight * fit.shear) / weight;
  const spread = sum((fit) => fit.weight * (fit.at - meanAt) ** 2);
  const slope =
    fits.length < 3 || spread <= 0
      ? 0
      : sum((fit) => fit.weight * (fit.at - meanAt) * (fit.shear - meanShear)) / spread;
  const bounded = Math.max(-0.12, Math.min(0.12, slope));
  return { middle: meanShear - bounded * meanAt, slope: bounded };
};

const rounds = 4;

/**
 * What the model itself is off by, in squares of the half range: level, blur and place of a bar are never quite as assumed.
 * The errors of the samples of one module are one error, so that each sample counts as its share of a module.
 */
const modelVariance = 0.05;

/**
 * Each band is the common series times a gain of its own, which changes slowly along the band, plus noise of its own:
 * gains, noise and series are estimated in turn, and every band counts by gain over noise (maximal ratio combining).
 * A scratch or a rubbed blob is noise in the bands that it crosses; a line of print has no gain.
 */
const combined = (bands: Field, module: number) => {
  const { width, height, values } = bands;
  const gainReach = Math.round(9 * module);
  const noiseReach = Math.max(2, Math.round(2 * module));
  let series: Float32Array = columnSums(bands, new Float32Array(width * height).fill(1 / height));
  let precision: Float32Array = new Float32Array(width);
  let gains: Float32Array = new Float32Array(width * height);
  for (let round = 0; round < rounds; round += 1) {
    const known = series;
    const power = boxBlurred({ width, height: 1, values: known.map((value) => value * value) }, gainReach, 0);
    const likeness = boxBlurred(
      { width, height, values: values.map((value, at) => value * (known[at % width] ?? 0)) },
      gainReach,
      0,
    ).values;
    gains = likeness.map((sum, at) => Math.max(0, sum / ((power.values[at % width] ?? 0) + 1e-6)));
    const residuals = values.map((value, at) => (value - (gains[at] ?? 0) * (known[at % width] ?? 0)) ** 2);
    const noise = boxBlurred({ width, height, values: residuals }, noiseReach, 0).values;
    const weights = gains.map((gain, at) => gain / ((noise[at] ?? 0) + 4));
    const quality = columnSums({ width, height, values: gains }, weights);
    series = columnSums(bands, weights).map((sum, at) => sum / ((quality[at] ?? 0) + 1e-9));
    precision = quality;
  }
  const { darkness, halfRange } = levelled(series, module);
  const bandWeights = Array.from({ length: height }, (_none, band) => {
    let sum = 0;
    for (let x = 0; x < width; x += 1) sum += Math.min(2, gains[band * width + x] ?? 0);
    return Math.min(1, sum / width);
  });
  return {
    darkness,
    precision: precision.map(
      (value, at) => 1 / (1 / (value * (halfRange[at] ?? 0) ** 2 + 1e-9) + modelVariance) / module,
    ),
    bandWeights,
  };
};

const columnSums = ({ width, height, values }: Field, weights: Float32Array): Float32Array => {
  const sums = new Float32Array(width);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      sums[x] = (sums[x] ?? 0) + (values[y * width + x] ?? 0) * (weights[y * width + x] ?? 0);
  return sums;
};

/** From bars and spaces of whatever contrast to 1 and −1: middle and half range of the 10th and 90th percentile around. */
const levelled = (series: Float32Array, module: number) => {
  const reach = Math.round(16 * module);
  const step = Math.max(1, Math.round(2 * module));
  const middles = new Float32Array(series.length);
  const ranges = new Float32Array(series.length);
  for (let at = 0; at < series.length; at += step) {
    const around = series.slice(Math.max(0, at - reach), at + reach + 1).sort();
    const low = around[Math.floor(0.1 * (around.length - 1))] ?? 0;
    const high = around[Math.floor(0.9 * (around.length - 1))] ?? 0;
    middles.fill((low + high) / 2, at, at + step);
    ranges.fill(Math.max(1e-3, (high - low) / 2), at, at + step);
  }
  const smooth = (values: Float32Array): Float32Array =>
    boxBlurred({ width: values.length, height: 1, values }, Math.round(4 * module), 0).values;
  const middle = smooth(middles);
  const halfRange = smooth(ranges);
  return {
    darkness: series.map((value, at) => -(value - (middle[at] ?? 0)) / (halfRange[at] ?? 1)),
    halfRange,
  };
};
