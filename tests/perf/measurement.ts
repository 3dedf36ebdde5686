/** What a benchmark hands back: named figures, each beside its limits and with the noise of its repeats. */

export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: 'ms' | 's' | 'MB' | '×' | 'tags' | 'kB' | 'pictures' | 'in 100';
  /** The most that is allowed; a figure with neither limit is for information. */
  readonly budget?: number;
  /** The least that is asked for. */
  readonly atLeast?: number;
  /** By which share of itself it may differ from run to run, as its repeats in this run say; absent where there were none. */
  readonly noise?: number;
}

export interface BenchmarkOptions {
  /** Whole sizes, as the limits name them; where it is false a run of all benchmarks takes some fifteen minutes. */
  readonly long: boolean;
  /** Pictures for each level of wear, for a benchmark that goes through pictures; its own number where it is absent. */
  readonly pictures?: number;
  /** The number of the first picture. */
  readonly first?: number;
  /** The series and the levels of wear to go through; all where absent. */
  readonly series?: readonly string[];
  readonly levels?: readonly string[];
  /** The longest record to go through. */
  readonly events?: number;
}

export type Benchmark = (options: BenchmarkOptions) => Promise<readonly Figure[]>;

/** A module of a benchmark. */
export interface BenchmarkModule {
  /** What its figures are held against, measured in the same run; by the clock alone where it says so. */
  readonly peer: string;
  readonly benchmark: Benchmark;
}

export interface Timed {
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly longestMs: number;
  readonly noise: number;
}

export const timesOf = (times: readonly number[]): Timed => {
  const sorted = times.toSorted((a, b) => a - b);
  return {
    medianMs: quantile(sorted, 0.5),
    p95Ms: quantile(sorted, 0.95),
    longestMs: quantile(sorted, 1),
    noise: noiseOf(sorted),
  };
};

/** `count` calls; `call` gets 0, 1, 2, … */
export const timed = async (count: number, call: (index: number) => unknown): Promise<Timed> => {
  const times: number[] = [];
  for (let index = 0; index < count; index += 1) {
    const started = performance.now();
    await call(index);
    times.push(performance.now() - started);
  }
  return timesOf(times);
};

/**
 * The notch of a box plot beside its median: 1.57 × the distance of the quartiles ÷ √n, so that two medians whose notches do not
 * meet differ at about the 95 % level (McGill, Tukey and Larsen, The American Statistician 32(1), 1978; from memory).
 */
export const noiseOf = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const median = quantile(sorted, 0.5);
  const spread = quantile(sorted, 0.75) - quantile(sorted, 0.25);
  return median === 0 ? 0 : (1.57 * spread) / Math.sqrt(sorted.length) / median;
};

/** Of values in their order, the one at this share of the way; the last one at 1. */
const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
