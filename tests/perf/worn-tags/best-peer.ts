/** What defines the levels of wear: how many status tags the best single general decoder reads. */
import type { Figure } from '../measurement.ts';
import type { JobResult } from './job.ts';
import { peerNames } from './peers.ts';
import type { WearLevel } from './wear-amounts.ts';

/** Pictures for each level; fewer say too little to hold a level to its definition. */
export const defaultPictures = 300;
/** In a run that is kept short: no limit that is a share of the pictures holds over so few. */
export const shortPictures = 24;

/** Of 100: about half at A, about 5 at B, none at C. */
const defined: Readonly<Partial<Record<WearLevel, readonly [number, number]>>> = {
  A: [45, 55],
  B: [3, 7],
  C: [0, 0],
};

/** Its figure, with the definition of the level as limits where the pictures are enough. */
export const bestPeer = (series: string, level: WearLevel, results: readonly JobResult[]): Figure => {
  const reads = peerNames.map(
    (peer) => results.filter(({ answers }) => answers[peer]?.right === true).length,
  );
  const range = defined[level];
  return {
    name: `${series} · ${level} · best general decoder · right`,
    value: (100 * Math.max(...reads)) / results.length,
    unit: 'in 100',
    ...(range === undefined || results.length < defaultPictures
      ? {}
      : { atLeast: range[0], budget: range[1] }),
  };
};
