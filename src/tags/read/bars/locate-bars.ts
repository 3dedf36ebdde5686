/** Where bars may stand in a picture: areas in which the brightness changes in one direction only. */
import { boxBlurred, type Field, reduced, sampledFrame } from '../field.ts';

export interface BarsPlace {
  /** The middle, in dots of the picture. */
  readonly x: number;
  readonly y: number;
  /** Of the direction across the bars, from the x axis towards the y axis, in radians; from −π/4 to 3π/4. */
  readonly angle: number;
  /** Across the bars and along them, in dots of the picture. */
  readonly length: number;
  readonly height: number;
  /** The clearer the higher; to compare places of one picture. */
  readonly score: number;
}

/** Side of a cell, in dots of the reduced picture: the longest bar or space of a symbol that fills half of it is shorter. */
const cellDots = 8;
/** Longer side of the reduced picture. */
const searchedDots = 800;

/** At most `most` places, the clearest first. */
export const locateBars = (field: Field, most: number): readonly BarsPlace[] => {
  const factor = Math.max(1, Math.round(Math.max(field.width, field.height) / searchedDots));
  const small = boxBlurred(reduced(field, factor), 1);
  return directionsOf(small)
    .flatMap((angle) => placesAt(small, angle))
    .sort((a, b) => b.score - a.score)
    .slice(0, most)
    .map((place) => ({
      ...place,
      x: (place.x + 0.5) * factor - 0.5,
      y: (place.y + 0.5) * factor - 0.5,
      length: place.length * factor,
      height: place.height * factor,
    }));
};

/** What a step of brightness counts at each dot: more in shadow than in light. */
const weightsOf = (field: Field): Float32Array =>
  boxBlurred(field, 20).values.map((mean) => 100 / (mean + 8));

const angleBins = 60;
const mostDirections = 3;

/**
 * The directions in which most cells change, at least 12° apart. Noise has no direction, so it cancels in the
 * doubled angle of the gradient that is summed over a cell.
 */
const directionsOf = (small: Field): readonly number[] => {
  const { width, height, values } = small;
  const weights = weightsOf(small);
  const histogram = new Float32Array(angleBins);
  for (let top = 1; top + cellDots < height; top += cellDots)
    for (let left = 1; left + cellDots < width; left += cellDots) {
      let cosine = 0;
      let sine = 0;
      for (let y = top; y < top + cellDots; y += 1)
        for (let x = left; x < left + cellDots; x += 1) {
          const at = y * width + x;
          const gx = (values[at + 1] ?? 0) - (values[at - 1] ?? 0);
          const gy = (values[at + width] ?? 0) - (values[at - width] ?? 0);
          cosine += gx * gx - gy * gy;
          sine += 2 * gx * gy;
        }
      const weight = weights[top * width + left] ?? 0;
      const bin = Math.floor(((Math.atan2(sine, cosine) / (2 * Math.PI) + 1) % 1) * angleBins);
      histogram[bin] = (histogram[bin] ?? 0) + weight * Math.sqrt(Math.hypot(cosine, sine));
    }
  const smooth = histogram.map((count, bin) => {
    const beside = (step: number): number => histogram[(bin + step + angleBins) % angleBins] ?? 0;
    return count + 0.7 * (beside(1) + beside(-1)) + 0.3 * (beside(2) + beside(-2));
  });
  const order = [...smooth.keys()].sort((a, b) => (smooth[b] ?? 0) - (smooth[a] ?? 0));
  const apart = Math.round(angleBins / 15);
  const chosen: number[] = [];
  for (const bin of order) {
    const far = chosen.every((other) => {
      const away = Math.abs(bin - other);
      return Math.min(away, angleBins - away) >= apart;
    });
    if (far) chosen.push(bin);
    if (chosen.length === mostDirections) break;
  }
  return chosen.map((bin) => {
    const angle = ((bin + 0.5) / angleBins) * Math.PI;
    return angle > 0.75 * Math.PI ? angle - Math.PI : angle;
  });
};

/** In the reduced picture turned so that bars of that direction stand upright, the best areas, in its own dots. */
const placesAt = (small: Field, angle: number): readonly BarsPlace[] => {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const width = Math.ceil(Math.abs(small.width * cosine) + Math.abs(small.height * sine));
  const height = Math.ceil(Math.abs(small.width * sine) + Math.abs(small.height * cosine));
  const middleX = (small.width - 1) / 2;
  const middleY = (small.height - 1) / 2;
  const frame = {
    x: middleX - (cosine * (width - 1)) / 2 + (sine * (height - 1)) / 2,
    y: middleY - (sine * (width - 1)) / 2 - (cosine * (height - 1)) / 2,
    alongX: cosine,
    alongY: sine,
    downX: -sine,
    downY: cosine,
  };
  const grid = uprightness(sampledFrame(small, frame, width, height));
  for (let cell = 0; cell < grid.values.length; cell += 1) {
    const column = ((cell % grid.width) + 0.5) * cellDots;
    const row = (Math.floor(cell / grid.width) + 0.5) * cellDots;
    const x = frame.x + column * cosine - row * sine;
    const y = frame.y + column * sine + row * cosine;
    const off = Math.min(x, y, small.width - x, small.height - y) < cellDots * 0.7;
    if (off) grid.values[cell] = -1;
  }
  const places: BarsPlace[] = [];
  const rectangles = [
    ...thresholds.map((threshold) => bestRectangle(grid, threshold)),
    (() => {
      const first = bestRectangle(grid, thresholds[0]);
      if (first !== undefined) blank(grid, first);
      return bestRectangle(grid, thresholds[0]);
    })(),
  ];
  for (const best of rectangles) {
    if (best === undefined) continue;
    const column = ((best.left + best.right) / 2) * cellDots;
    const row = ((best.top + best.bottom) / 2) * cellDots;
    places.push({
      x: frame.x + column * cosine - row * sine,
      y: frame.y + column * sine + row * cosine,
      angle,
      length: (best.right - best.left) * cellDots,
      height: (best.bottom - best.top) * cellDots,
      score: best.sum,
    });
  }
  return places;
};

/**
 * Per cell, how much more it changes across than along, −1 to 1: near 1 in bars. Rises and falls count only as
 * far as the cell and its two neighbours have both, which an edge has not.
 */
const uprightness = (turned: Field): Field => {
  const { width, height, values } = turned;
  const weights = weightsOf(turned);
  const columns = Math.floor(width / cellDots);
  const rows = Math.floor(height / cellDots);
  const rises = new Float32Array(columns * rows);
  const falls = new Float32Array(columns * rows);
  const along = new Float32Array(columns * rows);
  for (let y = 1; y + 1 < rows * cellDots; y += 1) {
    const row = Math.floor(y / cellDots) * columns;
    for (let x = 1; x + 1 < columns * cellDots; x += 1) {
      const at = y * width + x;
      const weight = weights[at] ?? 0;
      const gx = weight * ((values[at + 1] ?? 0) - (values[at - 1] ?? 0));
      const gy = weight * ((values[at + width] ?? 0) - (values[at - width] ?? 0));
      const cell = row + Math.floor(x / cellDots);
      const steep = gx > 0 ? rises : falls;
      steep[cell] = (steep[cell] ?? 0) + gx * gx;
      along[cell] = (along[cell] ?? 0) + gy * gy;
    }
  }
  const withNeighbours = (energy: Float32Array, cell: number): number =>
    (energy[cell - 1] ?? 0) + (energy[cell] ?? 0) + (energy[cell + 1] ?? 0);
  const amplitude = along.map((_energy, cell) => {
    const across = 2 * Math.min(withNeighbours(rises, cell), withNeighbours(falls, cell));
    const energy = across - 1.1 * withNeighbours(along, cell);
    return Math.sign(energy) * Math.sqrt(Math.abs(energy));
  });
  const sorted = amplitude.slice().sort();
  const usual = Math.max(sorted[Math.floor(0.93 * (sorted.length - 1))] ?? 0, 1e-6);
  const cells = amplitude.map((value) => Math.max(-1, Math.min(1, value / usual)));
  return boxBlurred({ width: columns, height: rows, values: cells }, bridgedCells, 1);
};

interface Rectangle {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly sum: number;
}

/** Cells to either side over which the mean is taken, so that rubbed parts of a symbol do not cut it in two. */
const bridgedCells = 4;

/** An edge of a tag or a panel is a cell or two wide; bars are higher in any picture in which they can be read. */
const leastRows = 3;

/** What is taken off every cell: the second takes in paler parts of a symbol, and more beside it. */
const thresholds = [0.3, 0.12] as const;

/** The rectangle of cells with the greatest sum, by Kadane's rule over every pair of rows. */
const bestRectangle = ({ width, height, values }: Field, threshold: number): Rectangle | undefined => {
  let best: Rectangle | undefined;
  const sums = new Float32Array(width);
  for (let top = 0; top < height; top += 1) {
    sums.fill(0);
    for (let bottom = top; bottom < height; bottom += 1) {
      let running = 0;
      let left = 0;
      for (let x = 0; x < width; x += 1) {
        const column = (sums[x] ?? 0) + (values[bottom * width + x] ?? 0) - threshold;
        sums[x] = column;
        if (running <= 0) {
          running = 0;
          left = x;
        }
        running += column;
        if (running > (best?.sum ?? 0) && bottom - top + 1 >= leastRows)
          best = { left, right: x + 1, top, bottom: bottom + 1, sum: running };
      }
    }
  }
  return best;
};

const blank = ({ width, values }: Field, { left, right, top, bottom }: Rectangle): void => {
  for (let y = top; y < bottom; y += 1) values.fill(-1, y * width + left, y * width + right);
};
