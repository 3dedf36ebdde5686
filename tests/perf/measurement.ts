/** What a benchmark hands back: named figures, each beside its budget. */

export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: 'ms' | 's' | 'MB' | '×' | 'tags' | 'kB';
  /** The most that is allowed; a figure without one is for information. */
  readonly budget?: number;
}

export type Benchmark = () => Promise<readonly Figure[]>;

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
