/** A Code 128 of ten characters at a place of a picture: how likely each character is, and how the symbol lies. */
import { benchIdAlphabet } from '../../../domain/bench-id/bench-id.ts';
import type { Field } from '../field.ts';
import { alphabetSize, type Likelihoods, noLikelihoods } from '../soft-decode.ts';
import { type BarsProfile, profileOf } from './bars-profile.ts';
import { everyShape, setBValue, startB, stopCode } from './code128.ts';
import type { BarsPlace } from './locate-bars.ts';
import {
  emissionsOf,
  everyCode,
  halved,
  type Reading,
  readShape,
  type Series,
  widthsBetween,
} from './trellis.ts';

export interface BarsRead {
  readonly likelihoods: Likelihoods;
  readonly score: number;
  readonly profile: BarsProfile;
  /** Whether the symbol runs against the direction of the place. */
  readonly reversed: boolean;
  readonly reading: Reading;
  readonly blur: number;
}

/** Of a Code 128 of ten characters, but for the few that have four digits in a row. */
export const usualModules = 145;
const shapes = everyShape(10);
const plainShape = shapes[0];
const quickCodes = [...[...benchIdAlphabet].map(setBValue), startB, stopCode];
/** Paths that are so much less likely than the best one say nothing more. */
const closeness = 60;

/** Standard deviations of the blur that are tried, in modules. */
const blurs = [0.35, 0.6, 0.85, 1.1] as const;

/** A Code 128 of a tag is about so many times as long as it is high (those of all tags: 4.4 to 7.6). */
const usualShape = 6.5;
const shortestShape = 4.5;

/** Of the whole symbol: a place that is too short for its height is a part of one, the rest of which is worn. */
export const likelyLength = ({ length, height }: BarsPlace): number =>
  length < shortestShape * height ? usualShape * height : length;

export const readBars = (field: Field, place: BarsPlace): BarsRead | undefined => {
  if (plainShape === undefined) return undefined;
  const length = likelyLength(place);
  const module = length / usualModules;
  const window = length === place.length ? 1.3 * length : 2 * length - place.length;
  const profile = profileOf(field, { ...place, length: window }, module);
  const widths = widthsBetween(11 * module * 0.72, 11 * module * 1.3);
  const found = (half: Series, blurModules: number, across: readonly number[]): Reading | undefined =>
    readShape(
      emissionsOf(
        half,
        (blurModules * module) / 2,
        across.map((width) => width / 2),
        quickCodes,
      ),
      plainShape,
      benchIdAlphabet,
      0.01,
    );
  const forward = { darkness: profile.darkness, precision: profile.precision };
  const backward = { darkness: forward.darkness.toReversed(), precision: forward.precision.toReversed() };
  const ahead = found(halved(forward), 0.5, widths);
  const back = found(halved(backward), 0.5, widths);
  const reversed = (back?.score ?? 0) > (ahead?.score ?? 0);
  const series = reversed ? backward : forward;
  const rough = reversed ? back : ahead;
  if (rough === undefined) return undefined;
  const near = rough.path.map(({ width }) => 2 * width);
  const closeWidths = widthsBetween(Math.min(...near) * 0.9, Math.max(...near) * 1.1);
  let blur: number = blurs[0];
  let best = Number.NEGATIVE_INFINITY;
  for (const candidate of blurs) {
    const read = found(halved(series), candidate, closeWidths);
    if (read === undefined || read.score < best) continue;
    best = read.score;
    blur = candidate;
  }
  const emissions = emissionsOf(series, blur * module, closeWidths, everyCode);
  const likelihoods = noLikelihoods().fill(Number.NEGATIVE_INFINITY);
  let reading: Reading | undefined;
  for (const shape of shapes) {
    const read = readShape(emissions, shape, benchIdAlphabet, closeness);
    if (read === undefined) continue;
    if (read.score > (reading?.score ?? Number.NEGATIVE_INFINITY)) reading = read;
    take(likelihoods, read);
  }
  if (reading === undefined) return undefined;
  const floor = reading.score - closeness;
  for (let at = 0; at < likelihoods.length; at += 1)
    likelihoods[at] = Math.max(likelihoods[at] ?? floor, floor) - reading.score;
  return { likelihoods, score: reading.score, profile, reversed, reading, blur };
};

/** Every character by the best path of any shape that has it. */
const take = (likelihoods: Likelihoods, { shape, slotScores }: Reading): void => {
  const offer = (position: number, symbol: number, score: number): void => {
    const at = position * alphabetSize + symbol;
    if (score > (likelihoods[at] ?? 0)) likelihoods[at] = score;
  };
  for (const [index, slot] of shape.slots.entries())
    for (const [code, score] of slotScores[index] ?? []) {
      if (slot.kind === 'character') {
        const symbol = benchIdAlphabet.indexOf(String.fromCharCode(code + 32));
        if (symbol >= 0) offer(slot.at, symbol, score);
      } else if (slot.kind === 'pair') {
        offer(slot.at, Math.floor(code / 10), score);
        offer(slot.at + 1, code % 10, score);
      }
    }
};

/** Where so many modules from the start of the symbol lie in the picture, and so many above the middle of its bars. */
export const placeOnTag = (
  { profile, reading, reversed }: BarsRead,
  moduleAcross: number,
  rowsUp: number,
): { readonly x: number; readonly y: number } => {
  const sample = sampleOf(reading, moduleAcross);
  const last = profile.darkness.length - 1;
  return reversed ? profile.at(last - sample, rowsUp) : profile.at(sample, -rowsUp);
};

const sampleOf = ({ path }: Reading, module: number): number => {
  const index = Math.max(0, Math.min(path.length - 1, Math.floor(module / 11)));
  const step = path[index];
  if (step === undefined) return 0;
  return step.at + ((module - 11 * index) * step.width) / 11;
};
