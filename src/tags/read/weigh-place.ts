/** What a place with bars comes to: bars and printed characters weighed together, and the bench IDs that fit best. */

import { benchIdAlphabet } from '../../domain/bench-id/bench-id.ts';
import type { BenchId } from '../../domain/brand.ts';
import type { BarsPlace } from './bars/locate-bars.ts';
import { type BarsRead, readBars } from './bars/read-bars.ts';
import { readCharactersOverBars } from './characters/character-strip.ts';
import type { CharactersRead } from './characters/read-characters.ts';
import type { Field } from './field.ts';
import type { Pace } from './pace.ts';
import {
  alphabetSize,
  benchIdLength,
  bestCodewords,
  bestScore,
  type Likelihoods,
  scoreOf,
} from './soft-decode.ts';
import type { Evidence } from './worn-reading.ts';

export interface WeighedPlace {
  readonly place: BarsPlace;
  readonly benchId: BenchId;
  /** By how much it is likelier than the next best bench ID. */
  readonly margin: number;
  /** By how much the likeliest ten characters, codeword or not, are likelier. */
  readonly loss: number;
  readonly evidence: readonly Evidence[];
}

/**
 * Neighbouring samples err together, so that sums of log likelihoods say too much; by so much each is taken down. Found on
 * worn pictures: see `leastMargin`.
 */
const barsWeight = 0.4;
const charactersWeight = 0.4;

export const weighPlace = (field: Field, place: BarsPlace, pace: Pace): WeighedPlace | undefined => {
  const bars = readBars(field, place);
  if (bars === undefined) return undefined;
  const characters = pace.isOver() ? undefined : readCharactersOverBars(field, bars);
  const sum = bars.likelihoods.map(
    (likelihood, at) =>
      barsWeight * likelihood +
      charactersWeight * ((characters?.likelihoods[at] ?? 0) - (characters?.score ?? 0)),
  );
  const [best, second] = bestCodewords(sum, 2);
  if (best === undefined) return undefined;
  return {
    place,
    benchId: best.benchId,
    margin: best.score - (second?.score ?? Number.NEGATIVE_INFINITY),
    loss: bestScore(sum) - best.score,
    evidence: evidenceOf(best.benchId, bars, characters),
  };
};

const evidenceOf = (
  benchId: BenchId,
  bars: BarsRead,
  characters: CharactersRead | undefined,
): readonly Evidence[] => {
  const { bandWeights } = bars.profile;
  const strongest = Math.max(...bandWeights);
  return [
    {
      kind: 'weighed',
      source: 'Code 128',
      bands: bandWeights.filter((weight) => weight > 0.5 * strongest).length,
      ofBands: bandWeights.length,
      characters: agreeing(bars.likelihoods, benchId),
      margin: barsWeight * marginOf(bars.likelihoods, benchId),
    },
    ...(characters === undefined
      ? []
      : [
          {
            kind: 'weighed',
            source: 'printed characters',
            characters: agreeing(characters.likelihoods, benchId),
            margin: charactersWeight * marginOf(characters.likelihoods, benchId),
          } as const,
        ]),
  ];
};

const marginOf = (likelihoods: Likelihoods, benchId: BenchId): number => {
  const rival = bestCodewords(likelihoods, 2).find((candidate) => candidate.benchId !== benchId);
  return rival === undefined ? 0 : scoreOf(likelihoods, benchId) - rival.score;
};

const agreeing = (likelihoods: Likelihoods, benchId: BenchId): number => {
  let count = 0;
  for (let position = 0; position < benchIdLength; position += 1) {
    const row = likelihoods.subarray(position * alphabetSize, (position + 1) * alphabetSize);
    const symbol = benchIdAlphabet.indexOf(benchId.charAt(position));
    if ((row[symbol] ?? 0) >= Math.max(...row)) count += 1;
  }
  return count;
};
