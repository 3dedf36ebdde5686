/** The line of the bench ID over the bars of a tag, found from the bars: brought level and read. */
import { type BarsRead, placeOnTag } from '../bars/read-bars.ts';
import { type Field, reduced, valueAt } from '../field.ts';
import { inkEvidence } from './ink-evidence.ts';
import { type CharactersRead, readCharacters } from './read-characters.ts';

/** Samples for each module of the bars. */
const density = 1.2;
/** Modules beside the bars in which the line may still begin or end, where the bars are misplaced by a symbol. */
const beside = 14;
/** Modules by which the line may begin before or after the bars without a doubt. */
const usualOff = 2.5;

/** Em widths of the ten characters and the hyphen, from the narrowest to the widest that there are. */
const narrowestEm = 5.9;
const widestEm = 8.5;

/** Modules from the upper edge of the bars to the baseline: none to twenty, for the edge of curved bars is not sharp. */
const lowestBaseline = -6;
const highestBaseline = 20;
/** A cap height over the highest baseline, and the margin over it. */
const headroom = 18;

/** The height of the baseline over its middle, in modules, at so many modules from the start of the bars. */
type Curve = (module: number) => number;

export const readCharactersOverBars = (field: Field, bars: BarsRead): CharactersRead | undefined => {
  const modules = 11 * (bars.reading.path.length - 1) + 13;
  const columns = Math.round((modules + 2 * beside) * density);
  const widths = bars.reading.path.map(({ width }) => width / 11);
  const moduleDots = widths.reduce((sum, width) => sum + width, 0) / widths.length;

  const stripBetween = (low: number, high: number, curve: Curve): Field => {
    const rows = Math.round((high - low) * density);
    const values = new Float32Array(columns * rows);
    for (let column = 0; column < columns; column += 1) {
      const module = column / density - beside;
      const top = high + curve(module);
      const upper = placeOnTag(bars, module, top * moduleDots);
      const lower = placeOnTag(bars, module, (top - 1) * moduleDots);
      const [stepX, stepY] = [(lower.x - upper.x) / density, (lower.y - upper.y) / density];
      for (let row = 0; row < rows; row += 1)
        values[row * columns + column] = valueAt(field, upper.x + row * stepX, upper.y + row * stepY);
    }
    return inkEvidence({ width: columns, height: rows, values }, Math.round(14 * density));
  };

  const edge = bars.profile.rows / 2 / moduleDots;
  const high = edge + highestBaseline + headroom;
  const rough = readCharacters(
    reduced(
      stripBetween(edge + lowestBaseline, high, () => 0),
      2,
    ),
    {
      ...endsAt(density / 2, modules),
      sizes: sizesFor(density / 2, modules, roughSizes),
      baseline: [((headroom - 2) * density) / 2, ((high - edge - lowestBaseline) * density) / 2 - 2],
    },
  );
  if (rough === undefined) return undefined;
  const heights = rough.places.map(({ x, baseline }) => ({
    at: (2 * x) / density - beside,
    value: high - (2 * baseline) / density,
  }));
  const curve = parabolaThrough(heights);
  const { across } = rough.size;
  return readCharacters(stripBetween(-4, headroom, curve), {
    ...endsAt(density, modules),
    sizes: fineSizes.map((scale) => ({ across: 2 * across * scale, down: 2 * across * scale })),
    baseline: [(headroom - 1.7) * density, (headroom + 1.7) * density],
  });
};

const fineSizes = [0.97, 0.99, 1.01, 1.03] as const;
const roughSizes = 1.04;

const endsAt = (perModule: number, modules: number) => {
  const start = beside * perModule;
  const end = (beside + modules) * perModule;
  const off = usualOff * perModule;
  return { start: [start - off, start + off], end: [end - off, end + off] } as const;
};

const sizesFor = (perModule: number, modules: number, ratio: number) => {
  const sizes: { across: number; down: number }[] = [];
  for (let em = narrowestEm; em <= widestEm; em *= ratio) {
    const across = (modules * perModule) / em;
    sizes.push({ across, down: across });
  }
  return sizes;
};

/** Least squares through the points, and again without the three that lie farthest off. */
const parabolaThrough = (points: readonly { readonly at: number; readonly value: number }[]): Curve => {
  const first = fitted(points);
  const near = [...points]
    .sort((a, b) => Math.abs(a.value - first(a.at)) - Math.abs(b.value - first(b.at)))
    .slice(0, -3);
  return fitted(near);
};

const fitted = (points: readonly { readonly at: number; readonly value: number }[]): Curve => {
  const scale = 1 / 70;
  const sums = [0, 0, 0, 0, 0];
  const right = [0, 0, 0];
  for (const { at, value } of points) {
    const x = at * scale - 1;
    for (let power = 0; power < 5; power += 1) sums[power] = (sums[power] ?? 0) + x ** power;
    for (let power = 0; power < 3; power += 1) right[power] = (right[power] ?? 0) + value * x ** power;
  }
  const [s0 = 0, s1 = 0, s2 = 0, s3 = 0, s4 = 0] = sums;
  const [r0 = 0, r1 = 0, r2 = 0] = right;
  const curved = s4 + 0.05;
  const determinant = s0 * (s2 * curved - s3 * s3) - s1 * (s1 * curved - s3 * s2) + s2 * (s1 * s3 - s2 * s2);
  if (Math.abs(determinant) < 1e-9) return () => r0 / Math.max(1, s0);
  const a =
    (r0 * (s2 * curved - s3 * s3) - s1 * (r1 * curved - s3 * r2) + s2 * (r1 * s3 - s2 * r2)) / determinant;
  const b =
    (s0 * (r1 * curved - r2 * s3) - r0 * (s1 * curved - s3 * s2) + s2 * (s1 * r2 - r1 * s2)) / determinant;
  const c = (s0 * (s2 * r2 - s3 * r1) - s1 * (s1 * r2 - r1 * s2) + r0 * (s1 * s3 - s2 * s2)) / determinant;
  return (at) => {
    const x = at * scale - 1;
    return a + b * x + c * x * x;
  };
};
