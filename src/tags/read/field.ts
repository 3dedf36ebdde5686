/** A grey picture in fractions, for arithmetic: reducing, blurring and sampling between dots. */
import type { Picture } from './picture.ts';

/** Row by row, in the steps of a `Picture` (0 black, 255 white) unless a function says otherwise. */
export interface Field {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

export const fieldOf = ({ width, height, luminance }: Picture): Field => ({
  width,
  height,
  values: Float32Array.from(luminance),
});

/** Rounded, and cut at black and white. */
export const pictureOf = ({ width, height, values }: Field): Picture => ({
  width,
  height,
  luminance: Uint8Array.from(Uint8ClampedArray.from(values)),
});

/** Means of blocks of `factor` by `factor` dots; what does not fill a block at the right and the bottom is left out. */
export const reduced = (field: Field, factor: number): Field => {
  if (factor <= 1) return field;
  const width = Math.floor(field.width / factor);
  const height = Math.floor(field.height / factor);
  const values = new Float32Array(width * height);
  const share = 1 / (factor * factor);
  for (let y = 0; y < height; y += 1)
    for (let inner = 0; inner < factor; inner += 1) {
      let from = (y * factor + inner) * field.width;
      for (let x = 0; x < width; x += 1) {
        let sum = 0;
        for (let step = 0; step < factor; step += 1, from += 1) sum += field.values[from] ?? 0;
        const to = y * width + x;
        values[to] = (values[to] ?? 0) + sum * share;
      }
    }
  return { width, height, values };
};

/** Means over windows of 2 · `radiusX` + 1 by 2 · `radiusY` + 1 dots, cut at the edges. */
export const boxBlurred = (field: Field, radiusX: number, radiusY = radiusX): Field => {
  const { width, height, values } = field;
  const across = new Float32Array(values.length);
  for (let y = 0; y < height; y += 1)
    slide(values, across, { start: y * width, step: 1, count: width, radius: radiusX });
  const both = new Float32Array(values.length);
  for (let x = 0; x < width; x += 1)
    slide(across, both, { start: x, step: width, count: height, radius: radiusY });
  return { width, height, values: both };
};

interface Line {
  readonly start: number;
  readonly step: number;
  readonly count: number;
  readonly radius: number;
}

const slide = (from: Float32Array, to: Float32Array, { start, step, count, radius }: Line): void => {
  let sum = 0;
  let inside = 0;
  for (let at = 0; at < Math.min(radius, count); at += 1) {
    sum += from[start + at * step] ?? 0;
    inside += 1;
  }
  for (let at = 0; at < count; at += 1) {
    if (at + radius < count) {
      sum += from[start + (at + radius) * step] ?? 0;
      inside += 1;
    }
    if (at - radius > 0) {
      sum -= from[start + (at - radius - 1) * step] ?? 0;
      inside -= 1;
    }
    to[start + at * step] = sum / inside;
  }
};

/** Gaussian blur of a series; `deviation` in steps. Beyond the ends the end values go on. */
export const blurredSeries = (series: Float32Array, deviation: number): Float32Array => {
  if (deviation < 0.05) return series.slice();
  const kernel = gaussianKernel(deviation);
  const reach = (kernel.length - 1) / 2;
  const blurred = new Float32Array(series.length);
  const last = series.length - 1;
  for (let at = 0; at < series.length; at += 1) {
    let sum = 0;
    for (let step = -reach; step <= reach; step += 1)
      sum += (kernel[step + reach] ?? 0) * (series[Math.min(last, Math.max(0, at + step))] ?? 0);
    blurred[at] = sum;
  }
  return blurred;
};

/** Odd length, sum 1, out to three deviations. */
export const gaussianKernel = (deviation: number): Float32Array => {
  const reach = Math.max(1, Math.ceil(3 * deviation));
  const kernel = new Float32Array(2 * reach + 1);
  let sum = 0;
  for (let step = -reach; step <= reach; step += 1) {
    const weight = Math.exp(-(step * step) / (2 * deviation * deviation));
    kernel[step + reach] = weight;
    sum += weight;
  }
  return kernel.map((weight) => weight / sum);
};

/** A parallelogram of a picture: where its first dot lies and how far one step along and one step down it goes, in dots. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly alongX: number;
  readonly alongY: number;
  readonly downX: number;
  readonly downY: number;
}

/** `width` by `height` samples of the frame, between the four nearest dots; off the picture its edge goes on. */
export const sampledFrame = (field: Field, frame: Frame, width: number, height: number): Field => {
  const values = new Float32Array(width * height);
  const { alongX, alongY } = frame;
  for (let row = 0; row < height; row += 1) {
    let x = frame.x + row * frame.downX;
    let y = frame.y + row * frame.downY;
    const start = row * width;
    for (let column = 0; column < width; column += 1) {
      values[start + column] = valueAt(field, x, y);
      x += alongX;
      y += alongY;
    }
  }
  return { width, height, values };
};

/** Between the four nearest dots; off the picture its edge goes on. */
export const valueAt = ({ width, height, values }: Field, x: number, y: number): number => {
  const within = Math.min(width - 1.001, Math.max(0, x));
  const down = Math.min(height - 1.001, Math.max(0, y));
  const left = Math.floor(within);
  const top = Math.floor(down);
  const shareX = within - left;
  const shareY = down - top;
  const at = top * width + left;
  const upper = (values[at] ?? 0) * (1 - shareX) + (values[at + 1] ?? 0) * shareX;
  const lower = (values[at + width] ?? 0) * (1 - shareX) + (values[at + width + 1] ?? 0) * shareX;
  return upper * (1 - shareY) + lower * shareY;
};
