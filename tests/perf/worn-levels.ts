/**
 * Whether the levels of wear are what they are defined to be, by general decoders alone: on the numbers from 1, on which
 * they were set, and on those from 1,000,000, which the benchmark of our reader takes.
 */
import type { Benchmark, Figure } from './measurement.ts';
import { bestPeer, defaultPictures, shortPictures } from './worn-tags/best-peer.ts';
import { type Job, peersOn } from './worn-tags/job.ts';
import { runJobs } from './worn-tags/run-jobs.ts';
import { firstBenchmarkIndex } from './worn-tags/worn-tag.ts';

const levels = ['A', 'B', 'C'] as const;
const ranges = { 'numbers from 1': 1, 'numbers from 1,000,000': firstBenchmarkIndex } as const;

export const peer = '@zxing/library, zxing-cpp, zbar, jsQR and libdmtx on the same pictures';

export const benchmark: Benchmark = async ({ long, pictures = long ? defaultPictures : shortPictures }) => {
  const figures: Figure[] = [];
  for (const [range, first] of Object.entries(ranges))
    for (const level of levels) {
      const jobs = Array.from(
        { length: pictures },
        (_, index): Job => ({ series: 'status tag', level, index: first + index, peersOnly: true }),
      );
      const results = await runJobs(jobs);
      for (const peer of peersOn['status tag']) {
        const reads = results.filter(({ answers }) => answers[peer]?.right === true).length;
        figures.push({
          name: `${range} · ${level} · ${peer} · right`,
          value: (100 * reads) / pictures,
          unit: 'in 100',
        });
      }
      figures.push(bestPeer(range, level, results));
    }
  return figures;
};
