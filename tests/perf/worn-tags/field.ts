/** Smooth random fields and blurs, on which the kinds of wear are built. */
import type { Random } from './random.ts';

/** One number for each dot, row by row. */
export interface Field {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

/** Smooth noise from 0 to 1 in which light and dark follow one another at about `grainDots`, with finer grain laid over it. */
export const noiseField = (
  width: number,
  height: number,
  grainDots: number,
  octaves: number,
  random: Random,
): Field => {
  const values = new Float32Array(width * height);
  let weight = 1;
  let total = 0;
  for (let octave = 0; octave < octaves; octave += 1) {
    addLattice(values, width, height, Math.max(1, grainDots / 2 ** octave), weight, random);
    total += weight;
    weight /= 2;
  }
  for (let index = 0; index < values.length; index += 1) values[index] = (values[index] ?? 0) / total;
  return { width, height, values };
};

const addLattice = (
  values: Float32Array,
  width: number,
  height: number,
  grain: number,
  weight: number,
  random: Random,
): void => {
  const columns = Math.ceil(width / grain) + 2;
  const rows = Math.ceil(height / grain) + 2;
  const lattice = Float32Array.from({ length: columns * rows }, random.next);
  const smooth = (share: number): number => share * share * (3 - 2 * share);
  const cellOf = Int32Array.from({ length: width }, (_, x) => Math.floor(x / grain));
  const shareOf = Float32Array.from({ length: width }, (_, x) => smooth(x / grain - Math.floor(x / grain)));
  const between = new Float32Array(columns);
  for (let y = 0; y < height; y += 1) {
    const row = Math.floor(y / grain);
    const down = smooth(y / grain - row);
    for (let column = 0; column < columns; column += 1) {
      const at = row * columns + column;
      between[column] = (lattice[at] ?? 0) * (1 - down) + (lattice[at + columns] ?? 0) * down;
    }
    const start = y * width;
    for (let x = 0; x < width; x += 1) {
      const cell = cellOf[x] ?? 0;
      const across = shareOf[x] ?? 0;
      const value = (between[cell] ?? 0) * (1 - across) + (between[cell + 1] ?? 0) * across;
      values[start + x] = (values[start + x] ?? 0) + weight * value;
    }
  }
};

/** The value below which the given share of the field lies. */
export const quantile = ({ values }: Field, share: number): number => {
  const step = Math.max(1, Math.floor(values.length / 8192));
  const sample: number[] = [];
  for (let index = 0; index < values.length; index += step) sample.push(values[index] ?? 0);
  sample.sort((left, right) => left - right);
  return sample[Math.min(sample.length - 1, Math.floor(share * sample.length))] ?? 0;
};

/** From 0 below `from` to 1 above `to`, evenly between. */
export const ramp = (value: number, from: number, to: number): number =>
  Math.min(1, Math.max(0, (value - from) / (to - from)));

/** Gaussian blur; the edge is continued outwards. */
export const blurred = (field: Field, sigmaDots: number): Field => {
  const reach = Math.ceil(3 * sigmaDots);
  if (sigmaDots < 0.1) return field;
  const kernel = Float32Array.from({ length: 2 * reach + 1 }, (_, index) =>
    Math.exp(-((index - reach) ** 2) / (2 * sigmaDots ** 2)),
  );
  const sum = kernel.reduce((left, right) => left + right, 0);
  const even = kernel.map((value) => value / sum);
  return alongRows(transposed(alongRows(transposed(field), even, reach)), even, reach);
};

const alongRows = ({ width, height, values }: Field, kernel: Float32Array, reach: number): Field => {
  const out = new Float32Array(values.length);
  const padded = new Float32Array(width + 2 * reach);
  for (let y = 0; y < height; y += 1) {
    const row = values.subarray(y * width, (y + 1) * width);
    padded.fill(row[0] ?? 0, 0, reach);
    padded.set(row, reach);
    padded.fill(row[width - 1] ?? 0, reach + width);
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      for (let tap = 0; tap < kernel.length; tap += 1) sum += (kernel[tap] ?? 0) * (padded[x + tap] ?? 0);
      out[y * width + x] = sum;
    }
  }
  return { width, height, values: out };
};

const transposed = ({ width, height, values }: Field): Field => {
  const out = new Float32Array(values.length);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) out[x * height + y] = values[y * width + x] ?? 0;
  return { width: height, height: width, values: out };
};

/** Smeared evenly along a straight line, as by a hand that moves while the shutter is open. */
export const smeared = ({ width, height, values }: Field, lengthDots: number, angle: number): Field => {
  if (lengthDots < 0.5) return { width, height, values };
  const steps = Math.ceil(lengthDots) + 1;
  const out = new Float32Array(values.length);
  for (let step = 0; step < steps; step += 1) {
    const along = (step / (steps - 1) - 0.5) * lengthDots;
    addShifted(out, { width, height, values }, Math.cos(angle) * along, Math.sin(angle) * along, 1 / steps);
  }
  return { width, height, values: out };
};

const addShifted = (
  out: Float32Array,
  { width, height, values }: Field,
  shiftX: number,
  shiftY: number,
  weight: number,
): void => {
  const wholeX = Math.floor(shiftX);
  const wholeY = Math.floor(shiftY);
  const right = shiftX - wholeX;
  const down = shiftY - wholeY;
  const clamp = (value: number, most: number): number => Math.min(most, Math.max(0, value));
  for (let y = 0; y < height; y += 1) {
    const upper = clamp(y + wholeY, height - 1) * width;
    const lower = clamp(y + wholeY + 1, height - 1) * width;
    for (let x = 0; x < width; x += 1) {
      const from = clamp(x + wholeX, width - 1);
      const to = clamp(x + wholeX + 1, width - 1);
      const above = (values[upper + from] ?? 0) * (1 - right) + (values[upper + to] ?? 0) * right;
      const below = (values[lower + from] ?? 0) * (1 - right) + (values[lower + to] ?? 0) * right;
      const index = y * width + x;
      out[index] = (out[index] ?? 0) + weight * (above * (1 - down) + below * down);
    }
  }
};
