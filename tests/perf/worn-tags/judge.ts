/** Whether a reader is right about a picture, and whether it is wrong. */
import { parseBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { readTagText } from '../../../src/domain/tag-text.ts';
import type { WornReading } from '../../../src/tags/read/read-worn-tag.ts';

export interface Answer {
  /** It gave what is in the picture. */
  readonly right: boolean;
  /** It gave a bench ID that is not in the picture. */
  readonly wrong: boolean;
  /** Of two tags it gave one as if it were the only one. */
  readonly oneOfTwo?: boolean;
  /** Of two tags it said that there are several, whether it could name both or not. */
  readonly saidSeveral?: boolean;
}

/** Of our reader. Where no tag is in the picture, right is to say so. */
export const judgeReading = (reading: WornReading, benchIds: readonly BenchId[]): Answer => {
  const given = givenIn(reading);
  const wrong = given.some((benchId) => !benchIds.includes(benchId));
  const right = !wrong && benchIds.every((benchId) => given.includes(benchId));
  if (benchIds.length !== 2) return { right, wrong };
  return {
    right,
    wrong,
    oneOfTwo: !wrong && reading.kind === 'read',
    saidSeveral: !wrong && reading.kind === 'several tags',
  };
};

const givenIn = (reading: WornReading): readonly BenchId[] => {
  switch (reading.kind) {
    case 'read':
      return [reading.benchId];
    case 'several tags':
      return reading.benchIds;
    case 'none':
      return [];
  }
};

/**
 * A general decoder reads a picture where any symbol gives the bench ID, alone or in the text of a tag. It is wrong where
 * one gives ten characters of the alphabet, or the text of a tag, with another: it knows no check symbols.
 */
export const judgeTexts = (texts: readonly string[], benchIds: readonly BenchId[]): Answer => {
  const given = texts
    .map((text) => readTagText(text)?.benchId ?? text.trim())
    .filter((text) => parseBenchId(text).kind !== 'malformed');
  const isThere = (text: string): boolean => benchIds.some((benchId) => benchId === text);
  return { right: given.some(isThere), wrong: !given.every(isThere) };
};
