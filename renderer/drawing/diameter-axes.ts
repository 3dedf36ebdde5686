/** The axes of the diameter chart: days across, diameters up, with room for every reading and for the minimum. */
import { type DiameterUnit, diameterIn } from '../../src/domain/length.ts';
import type { DiameterTrend } from '../../src/domain/lifeline/trend.ts';

export interface DiameterAxes {
  x(isoDate: string): number;
  /** From the top. */
  y(diameterMm: number): number;
  /** Kept within the chart: the band of few readings is far wider than what was read. */
  clippedY(diameterMm: number): number;
  /** In millimetres, from the least. */
  readonly ticks: readonly number[];
}

/** The smallest that gives at most six ticks is taken. */
const steps: Readonly<Record<DiameterUnit, readonly number[]>> = {
  mm: [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10],
  in: [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5],
};
const mostTicks = 6;

export const chartAxes = (
  { points, band }: Extract<DiameterTrend, { readonly kind: 'trend' }>,
  minimumMm: number,
  unit: DiameterUnit,
  width: number,
  height: number,
): DiameterAxes => {
  const dayOf = (isoDate: string) => Date.parse(isoDate) / 86_400_000;
  const from = dayOf(band[0]?.on ?? '');
  const span = dayOf(band.at(-1)?.on ?? '') - from;
  const values = [...points.map(({ diameterMm }) => diameterMm), minimumMm];
  const least = Math.min(...values);
  const most = Math.max(...values);
  const stepsMm = steps[unit].map((each) => each / diameterIn(1, unit));
  const step = stepsMm.find((each) => (most - least) / each <= mostTicks - 2) ?? most;
  const low = Math.floor(least / step - 1e-9) * step;
  const high = (Math.floor(most / step + 1e-9) + 1) * step;
  const y = (diameterMm: number) => ((high - diameterMm) / (high - low)) * height;
  const count = Math.round((high - low) / step);
  return {
    x: (isoDate) => ((dayOf(isoDate) - from) / span) * width,
    y,
    clippedY: (diameterMm) => Math.min(Math.max(y(diameterMm), 0), height),
    ticks: Array.from({ length: count + 1 }, (_, index) => low + index * step),
  };
};
