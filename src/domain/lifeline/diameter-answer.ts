/** The rules of a diameter check: which readings can be, and what they come to. */
import type { Answer, DiameterReading } from '../answer.ts';
import { diameterText, type LengthUnit, lengthText } from '../length.ts';
import { fillMessage, type Language } from '../message.ts';
import type { DeviceFacts, DiameterCheck } from '../procedure.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Reason } from '../verdict.ts';
import { isBelowMinimum } from './below-minimum.ts';

/** Near the hook, midway, near full payout, each a third of the lifeline (common practice, no source). */
export const lifelineThirds = 3;

/** No wire rope reads thicker than this many times its nominal diameter: the decimal mark or the unit is wrong. */
const mostTimesNominal = 2;

/** What readings are held against. */
export type LifelineFacts = Pick<
  DeviceFacts,
  'ratedLengthM' | 'lifelineDiameterMm' | 'lifelineMinimumDiameterMm'
>;

type DiameterAnswer = Extract<Answer, { kind: 'diameters' }>;

/**
 * Why the readings cannot be taken, or `undefined` where they can. With a manufacturer's minimum there is at least one in
 * each third of the lifeline; without one, none need be given.
 */
export const faultOfReadings = ({ readings }: DiameterAnswer, facts: LifelineFacts): Refusal | undefined => {
  for (const reading of readings) {
    const fault = faultOfReading(reading, facts);
    if (fault !== undefined) return fault;
  }
  if (facts.lifelineMinimumDiameterMm === undefined) return undefined;
  const thirds = new Set(readings.map(({ positionM }) => thirdOf(positionM, facts)));
  return thirds.size < lifelineThirds ? refusal('diameter-places', {}, 'answer') : undefined;
};

/** Why one reading cannot be, or `undefined` where it can. */
export const faultOfReading = (
  { positionM, diameterMm }: DiameterReading,
  { ratedLengthM, lifelineDiameterMm }: LifelineFacts,
): Refusal | undefined => {
  if (positionM > ratedLengthM)
    return refusal('position-beyond-lifeline', { positionM, ratedM: ratedLengthM }, 'answer');
  return diameterMm > 0 && diameterMm <= mostTimesNominal * lifelineDiameterMm
    ? undefined
    : refusal('diameter-impossible', { diameterMm, nominalMm: lifelineDiameterMm }, 'answer');
};

/** 0 near the hook, 1 midway, 2 near full payout. */
export const thirdOf = (positionM: number, { ratedLengthM }: LifelineFacts): number =>
  Math.min(Math.floor((positionM / ratedLengthM) * lifelineThirds), lifelineThirds - 1);

/** One reason, for the least reading: all of them stand in the record. */
export const reasonsOfReadings = (
  check: DiameterCheck,
  { readings }: DiameterAnswer,
  { lifelineMinimumDiameterMm: minimum }: LifelineFacts,
  unit: LengthUnit,
): Reason[] => {
  const least = readings.reduce<DiameterReading | undefined>(
    (so, reading) => (so === undefined || reading.diameterMm < so.diameterMm ? reading : so),
    undefined,
  );
  if (minimum === undefined || least === undefined || !isBelowMinimum(least.diameterMm, minimum)) return [];
  const said = (language: Language) => ({
    diameter: diameterText(least.diameterMm, unit, language),
    position: lengthText(least.positionM, unit, language),
    minimum: diameterText(minimum, unit, language),
  });
  return [
    {
      key: `${check.key}.below-minimum`,
      zone: check.zone,
      effect: 'remove',
      positionM: least.positionM,
      sentence: fillMessage(check.reasons.belowMinimum, { en: said('en'), es: said('es') }),
    },
  ];
};
