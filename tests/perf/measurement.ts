/** What a benchmark hands back: named figures, each beside its budget. */

export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: 'ms' | 's' | 'MB' | '×' | 'tags' | 'kB' | 'pictures' | 'in 100';
  /** The most that is allowed; a figure with neither limit is for information. */
  readonly budget?: number;
  /** The least that is asked for. */
  readonly atLeast?: number;
}

export interface BenchmarkOptions {
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

/** Median and 95th percentile in milliseconds of `count` calls; `call` gets 0, 1, 2, … */
export const timed = async (
  count: number,
  call: (index: number) => unknown,
): Promise<{ readonly medianMs: number; readonly p95Ms: number }> => {
  const times: number[] = [];
  for (let index = 0; index < count; index += 1) {
    const started = performance.now();
    await call(index);
    times.push(performance.now() - started);
  }
  times.sort((a, b) => a - b);
  const at = (share: number): number =>
    times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0;
  return { medianMs: at(0.5), p95Ms: at(0.95) };
};
