/**
 * Worn tags: our reader and general decoders on the same pictures in the same run.
 *
 * Levels A, B and C are set by the general decoders (`wear-amounts.ts`). Pictures have numbers from 1,000,000 up, on which
 * nothing is tuned. 300 for each level of the status tag with `--long`, 24 without, unless `--pictures` says otherwise; of the
 * other series a third.
 */
import type { Benchmark, Figure } from './measurement.ts';
import { bestPeer, defaultPictures, shortPictures } from './worn-tags/best-peer.ts';
import {
  type Job,
  type JobResult,
  type OurMode,
  ourModes,
  readersOn,
  type Series,
  seriesNames,
  stillBudgetMs,
} from './worn-tags/job.ts';
import { runJobs } from './worn-tags/run-jobs.ts';
import { type WearLevel, wearLevels } from './worn-tags/wear-amounts.ts';
import { firstBenchmarkIndex } from './worn-tags/worn-tag.ts';

/** What our reader is to read of 100 whole status tags. */
const leastReads: Readonly<Partial<Record<WearLevel, number>>> = {
  fresh: 100,
  used: 100,
  A: 99,
  B: 95,
  C: 60,
};

/** Two tags this little worn must be told apart; worn further, one of them may be past reading. */
const toldApart: readonly WearLevel[] = ['fresh', 'used'];

export const peer = '@zxing/library, zxing-cpp, zbar, jsQR and libdmtx on the same pictures';

export const benchmark: Benchmark = async ({
  long,
  pictures = long ? defaultPictures : shortPictures,
  first = firstBenchmarkIndex,
  series = seriesNames,
  levels = wearLevels,
}) => {
  const wanted = jobsFor(pictures, first).filter(
    (job) => series.includes(job.series) && levels.includes(job.level),
  );
  const results = await runJobs(wanted);
  for (const line of results.flatMap(mistakesIn)) console.error(line);
  return seriesNames.flatMap((name) =>
    wearLevels.flatMap((level) => {
      const found = results.filter(({ job }) => job.series === name && job.level === level);
      return found.length === 0 ? [] : figuresOf(name, level, found);
    }),
  );
};

/** Which picture our reader is wrong about, so that it can be made again. */
const mistakesIn = ({ job, answers }: JobResult): readonly string[] =>
  ourModes
    .filter((mode) => answers[mode]?.wrong === true || answers[mode]?.oneOfTwo === true)
    .map((mode) => {
      const what = answers[mode]?.wrong === true ? 'a wrong ID' : 'one of two tags as the only one';
      return `${job.series} ${job.index}, ${job.level}: ${mode} gave ${what}`;
    });

const jobsFor = (pictures: number, first: number): readonly Job[] =>
  seriesNames.flatMap((series) =>
    wearLevels.flatMap((level) =>
      Array.from({ length: series === 'status tag' ? pictures : Math.ceil(pictures / 3) }, (_, index) => ({
        series,
        level,
        index: first + index,
      })),
    ),
  );

const figuresOf = (series: Series, level: WearLevel, results: readonly JobResult[]): readonly Figure[] => {
  const count = (test: (result: JobResult) => boolean | undefined): number =>
    results.filter((result) => test(result) === true).length;
  const inHundred = (number: number, of: number): number => (100 * number) / of;
  const name = (reader: string, what: string): string => `${series} · ${level} · ${reader} · ${what}`;

  const figures = readersOn(series).flatMap((reader): readonly Figure[] => {
    const ours = ourModes.find((mode) => mode === reader);
    const reads = inHundred(
      count(({ answers }) => answers[reader]?.right),
      count(({ answers }) => answers[reader] !== undefined),
    );
    const wrong = count(({ answers }) => answers[reader]?.wrong);
    return [
      {
        name: name(reader, 'right'),
        value: reads,
        unit: 'in 100',
        ...(ours === undefined ? {} : limitOn(series, level, results.length)),
      },
      {
        name: name(reader, 'wrong'),
        value: wrong,
        unit: 'pictures',
        ...(ours === undefined ? {} : { budget: 0 }),
      },
      ...(ours === undefined ? [] : ourFigures(series, ours, results, name)),
    ];
  });
  return series === 'status tag' ? [...figures, bestPeer(series, level, results)] : figures;
};

const limitOn = (series: Series, level: WearLevel, pictures: number): Partial<Figure> => {
  if (series === 'status tag' && pictures < defaultPictures) return {};
  switch (series) {
    case 'status tag':
      return { atLeast: leastReads[level] ?? 0 };
    case 'two tags':
      return toldApart.includes(level) ? { atLeast: 100 } : {};
    default:
      return {};
  }
};

const ourFigures = (
  series: Series,
  mode: OurMode,
  results: readonly JobResult[],
  name: (reader: string, what: string) => string,
): readonly Figure[] => {
  const times = results.flatMap(({ answers }) => answers[mode]?.ms ?? []).sort((left, right) => left - right);
  const at = (share: number): number =>
    times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0;
  const count = (what: 'oneOfTwo' | 'saidSeveral'): number =>
    results.filter(({ answers }) => answers[mode]?.[what] === true).length;
  return [
    { name: name(mode, 'median time'), value: at(0.5), unit: 'ms' },
    { name: name(mode, '95th percentile of time'), value: at(0.95), unit: 'ms' },
    { name: name(mode, 'longest time'), value: at(1), unit: 'ms', budget: stillBudgetMs },
    ...(series === 'two tags'
      ? [
          {
            name: name(mode, 'said to be several'),
            value: (100 * count('saidSeveral')) / results.length,
            unit: 'in 100' as const,
          },
          {
            name: name(mode, 'one taken for the only one'),
            value: count('oneOfTwo'),
            unit: 'pictures' as const,
            budget: 0,
          },
        ]
      : []),
  ];
};
