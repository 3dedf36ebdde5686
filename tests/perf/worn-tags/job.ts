/** One picture of the benchmark, and what each reader made of it. */

import type { BenchId } from '../../../src/domain/brand.ts';
import { prepareDecodersInNode } from '../../../src/tags/read/node-decoders.ts';
import type { Picture } from '../../../src/tags/read/picture.ts';
import { readWornTag } from '../../../src/tags/read/read-worn-tag.ts';
import { isInFleet } from './fleet.ts';
import { type Answer, judgeReading, judgeTexts } from './judge.ts';
import { otherPicture } from './other-pictures.ts';
import { type PeerName, peers } from './peers.ts';
import { twoTags } from './two-tags.ts';
import type { WearLevel } from './wear-amounts.ts';
import { photographed, wornIdLabel, wornTag } from './worn-tag.ts';

export const seriesNames = ['status tag', 'ID label', 'none of ours', 'two tags'] as const;
export type Series = (typeof seriesNames)[number];

export interface Job {
  readonly series: Series;
  readonly level: WearLevel;
  readonly index: number;
  /** Without our reader: to set the levels, which are none of its business. */
  readonly peersOnly?: true;
}

export const ourModes = ['ours, register known', 'ours, no register'] as const;
export type OurMode = (typeof ourModes)[number];
export type ReaderName = OurMode | PeerName;

/** `ms`: the processor time that our reader took. */
export type TimedAnswer = Answer & { readonly ms?: number };

export interface JobResult {
  readonly job: Job;
  readonly answers: Readonly<Partial<Record<ReaderName, TimedAnswer>>>;
}

/** A still picture is to be read within this time on one core. */
export const stillBudgetMs = 5000;

/** The status tag has no Data Matrix and the ID label nothing else. */
export const peersOn: Readonly<Record<Series, readonly PeerName[]>> = {
  'status tag': ['@zxing/library', 'zxing-cpp', 'zbar', 'jsQR'],
  'ID label': ['@zxing/library', 'zxing-cpp', 'libdmtx'],
  'none of ours': [],
  'two tags': [],
};

export const readersOn = (series: Series): readonly ReaderName[] => [...ourModes, ...peersOn[series]];

export const runJob = async (job: Job): Promise<JobResult> => {
  const { picture, benchIds } = await pictureOf(job);
  const answers: Partial<Record<ReaderName, TimedAnswer>> = {};
  if (job.peersOnly === undefined)
    for (const mode of modesFor(job)) answers[mode] = await ourAnswer(mode, picture, benchIds);
  for (const peer of peersOn[job.series]) answers[peer] = judgeTexts(await peers[peer](picture), benchIds);
  return { job, answers };
};

/** Without the register every third picture is read: what that loses shows in fewer, and each takes the reader a second. */
const modesFor = ({ index, series }: Job): readonly OurMode[] =>
  series === 'status tag' && index % 3 !== 0 ? ['ours, register known'] : ourModes;

interface Subject {
  readonly picture: Picture;
  /** The bench IDs that are in the picture. */
  readonly benchIds: readonly BenchId[];
}

const pictureOf = async ({ series, level, index }: Job): Promise<Subject> => {
  switch (series) {
    case 'status tag': {
      const { picture, benchId } = await wornTag(index, level);
      return { picture, benchIds: [benchId] };
    }
    case 'ID label': {
      const { picture, benchId } = await wornIdLabel(index, level);
      return { picture, benchIds: [benchId] };
    }
    case 'none of ours':
      return { picture: await photographed(await otherPicture(index), level, index), benchIds: [] };
    case 'two tags':
      return twoTags(index, level);
  }
};

const ourAnswer = async (
  mode: OurMode,
  picture: Picture,
  benchIds: readonly BenchId[],
): Promise<TimedAnswer> => {
  const copy: Picture = { ...picture, luminance: picture.luminance.slice() };
  prepareDecodersInNode();
  const started = processorMs();
  const reading = await readWornTag(copy, {
    budgetMs: stillBudgetMs,
    now: processorMs,
    ...(mode === 'ours, register known' ? { isRegistered: isInFleet } : {}),
  });
  return { ...judgeReading(reading, benchIds), ms: processorMs() - started };
};

/** What this process has used of its core, so that a busy machine neither shortens a reading nor lengthens it. */
const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
