/** Readings of the diameter in the making: first the place, then the diameter there, as often as it is measured. */
import type { Answer, DiameterReading } from '../../../src/domain/answer.ts';
import { diameterUnitOf, parseDiameter, parseLength } from '../../../src/domain/length.ts';
import { faultOfReading, faultOfReadings } from '../../../src/domain/lifeline/diameter-answer.ts';
import { typedPosition } from '../../drawing/strip-scale.ts';
import type { DraftContext, DraftInput, DraftStep } from './answer-draft.ts';
import { typedAfter } from './typed-after.ts';

export interface DiameterDraft {
  readonly stage: 'diameters';
  readonly readings: readonly DiameterReading[];
  readonly field: 'position' | 'diameter';
  /** Digits so far, of the place in the unit of the station, and of the diameter in that of its callipers. */
  readonly position: string;
  readonly diameter: string;
}

/** As many as an answer takes. */
const mostReadings = 50;

/** Starts from the readings on record. */
export const openReadings = (given: Answer | undefined): DiameterDraft => ({
  stage: 'diameters',
  readings: given?.kind === 'diameters' ? given.readings : [],
  field: 'position',
  position: '',
  diameter: '',
});

export const stepReadings = (draft: DiameterDraft, input: DraftInput, context: DraftContext): DraftStep => {
  switch (input.kind) {
    case 'confirm':
      return draft.field === 'position' ? confirmPlace(draft, context) : confirmDiameter(draft, context);
    case 'cancel':
      return draft.field === 'diameter'
        ? { draft: { ...draft, field: 'position', diameter: '' } }
        : { draft: { stage: 'question' } };
    case 'place':
      return {
        draft: { ...draft, field: 'position', position: typedPosition(input.positionM, context.unit) },
      };
    case 'drop':
      return {
        draft: { ...draft, readings: draft.readings.filter((_, index) => index !== input.finding) },
      };
    case 'erase':
      return { draft: erased(draft) };
    default:
      return { draft: { ...draft, [draft.field]: typedAfter(draft[draft.field], input) } };
  }
};

/** Erasing in an empty field goes one step back: to the place, or to the reading before. */
const erased = (draft: DiameterDraft): DiameterDraft => {
  if (draft[draft.field] !== '')
    return { ...draft, [draft.field]: typedAfter(draft[draft.field], { kind: 'erase' }) };
  return draft.field === 'diameter'
    ? { ...draft, field: 'position' }
    : { ...draft, readings: draft.readings.slice(0, -1) };
};

/** Confirming without a place ends the readings. */
const confirmPlace = (draft: DiameterDraft, { unit, facts }: DraftContext): DraftStep => {
  if (draft.position === '') {
    const answer = { kind: 'diameters' as const, readings: [...draft.readings] };
    return faultOfReadings(answer, facts) === undefined
      ? { draft: { stage: 'question' }, answer }
      : { draft, fault: 'diameterPlaces' };
  }
  const positionM = parseLength(draft.position, unit);
  if (positionM === undefined) return { draft, fault: 'notANumber' };
  if (positionM > facts.ratedLengthM) return { draft, fault: 'beyondLifeline' };
  return draft.readings.length < mostReadings
    ? { draft: { ...draft, field: 'diameter' } }
    : { draft, fault: 'diametersTooMany' };
};

const confirmDiameter = (draft: DiameterDraft, { unit, facts }: DraftContext): DraftStep => {
  const positionM = parseLength(draft.position, unit);
  const diameterMm = parseDiameter(draft.diameter, diameterUnitOf(unit));
  if (positionM === undefined) return { draft: { ...draft, field: 'position' }, fault: 'notANumber' };
  if (diameterMm === undefined) return { draft, fault: 'diameterNotANumber' };
  const reading = { positionM, diameterMm };
  return faultOfReading(reading, facts) === undefined
    ? { draft: { ...openReadings(undefined), readings: [...draft.readings, reading] } }
    : { draft: { ...draft, diameter: '' }, fault: 'diameterImpossible' };
};
