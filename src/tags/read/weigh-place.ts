/** What a place with bars comes to: bars and printed characters weighed together, and the bench IDs that fit best. */

import { benchIdAlphabet } from '../../domain/bench-id/bench-id.ts';
import type { BenchId } from '../../domain/brand.ts';
import type { BarsPlace } from './bars/locate-bars.ts';
import { type BarsRead, likelyLength, readBars, usualModules } from './bars/read-bars.ts';
import { readCharactersOverBars } from './characters/character-strip.ts';
import type { CharactersRead } from './characters/read-characters.ts';
import { type Field, reduced } from './field.ts';
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

export const weighPlace = (whole: Field, at: BarsPlace, pace: Pace): WeighedPlace | undefined => {
  const { field, place } = atUsefulSize(whole, at);
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
  if (characters !== undefined && isContradicted(best.benchId, bars.likelihoods, characters.likelihoods))
    return undefined;
  return {
    place: at,
    benchId: best.benchId,
    margin: best.score - (second?.score ?? Number.NEGATIVE_INFINITY),
    loss: bestScore(sum) - best.score,
    evidence: evidenceOf(best.benchId, bars, characters),
  };
};

/** Log likelihood by which one source must prefer another character, before weighing, to speak against one. */
const clearlyOther = 8;

/**
 * Whether bars and printed characters, each by itself, say one and the same other character somewhere: then the tag says
 * something else than the bench ID, and to mend it would be to guess. Wear seldom makes the same error twice.
 */
const isContradicted = (benchId: BenchId, bars: Likelihoods, characters: Likelihoods): boolean => {
  for (let position = 0; position < benchIdLength; position += 1) {
    const symbol = benchIdAlphabet.indexOf(benchId.charAt(position));
    const other = clearOtherAt(bars, position, symbol);
    if (other !== undefined && other === clearOtherAt(characters, position, symbol)) return true;
  }
  return false;
};

const clearOtherAt = (likelihoods: Likelihoods, position: number, symbol: number): number | undefined => {
  const row = likelihoods.subarray(position * alphabetSize, (position + 1) * alphabetSize);
  const best = row.reduce((at, value, index) => (value > (row[at] ?? 0) ? index : at), 0);
  return (row[best] ?? 0) - (row[symbol] ?? 0) > clearlyOther ? best : undefined;
};

/** More dots for a module than this say nothing more and cost time. */
const usefulModuleDots = 5;

const atUsefulSize = (field: Field, place: BarsPlace) => {
  const factor = Math.max(1, Math.floor(likelyLength(place) / usualModules / usefulModuleDots));
  const scaled = (dots: number): number => (dots + 0.5) / factor - 0.5;
  return {
    field: reduced(field, factor),
    place: {
      ...place,
      x: scaled(place.x),
      y: scaled(place.y),
      length: place.length / factor,
      height: place.height / factor,
    },
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
