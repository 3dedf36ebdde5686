/** Readings of the diameter, held against the minimum of the manufacturer. */
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../src/domain/answer.ts';
import { metres, millimetres } from '../../../src/domain/brand.ts';
import type { DeviceFacts } from '../../../src/domain/procedure.ts';
import { faultOfAnswer, verdictOf } from '../../../src/domain/verdict.ts';
import { goodAnswers, procedure, procedureVersion, shippedFacts } from '../../support/shipped-rules.ts';

/** 50 ft in metres: 1 ft = 0.3048 m exactly (NIST SP 811). */
const fiftyFeet = 15.24;
const facts = { ...shippedFacts, ratedLengthM: fiftyFeet };

const diameters = (...readings: readonly (readonly [number, number])[]): Answer => ({
  kind: 'diameters',
  readings: readings.map(([positionM, diameterMm]) => ({
    positionM: metres(positionM),
    diameterMm: millimetres(diameterMm),
  })),
});

describe('the diameter of the lifeline', () => {
  const { lifelineMinimumDiameterMm: _minimum, ...withoutMinimum } = facts;
  const diameterCheck = procedure.checks.find(({ kind }) => kind === 'lifeline-diameter')!;
  const fault = (answer: Answer, held: DeviceFacts = facts) =>
    faultOfAnswer(diameterCheck, answer, held)?.code;
  const verdictOfReadings = (answer: Answer, held: DeviceFacts = facts) =>
    verdictOf(procedure, { ...goodAnswers(fiftyFeet), [diameterCheck.key]: answer }, held, 'm');

  test('below the minimum of the manufacturer removes the device: of the least reading, with its place', () => {
    const verdict = verdictOfReadings(diameters([1, 4.7], [7.2, 4.29], [8, 4.25], [14, 4.6]));
    expect(verdict.kind).toBe('remove from service');
    expect(verdict.kind === 'remove from service' && verdict.reasons).toEqual([
      {
        key: 'lifeline.diameter.below-minimum',
        zone: 'lifeline',
        effect: 'remove',
        positionM: 8,
        sentence: {
          en: 'Lifeline 4.25 mm thick at 8 m from the hook; the manufacturer’s minimum is 4.3 mm.',
          es: 'Cable de 4,25 mm a 8 m del gancho; el mínimo del fabricante es 4,3 mm.',
        },
      },
    ]);
  });

  test('at the minimum is good, a hundredth of a millimetre less is not', () => {
    expect(verdictOfReadings(diameters([1, 4.3], [7, 4.3], [14, 4.3])).kind).toBe('pass');
    expect(verdictOfReadings(diameters([1, 4.3], [7, 4.29], [14, 4.3])).kind).toBe('remove from service');
  });

  test('is said in inches where lengths are in feet, and told from the minimum there too', () => {
    const verdict = verdictOf(
      procedure,
      { ...goodAnswers(fiftyFeet), [diameterCheck.key]: diameters([1, 4.7], [7.62, 4.29], [14, 4.6]) },
      facts,
      'ft',
    );
    // 4.29 mm / 25.4 = 0.16890 in, 4.3 mm / 25.4 = 0.16929 in (1 in = 25.4 mm exactly, NIST SP 811).
    expect(
      verdict.kind === 'remove from service' && verdict.reasons.map(({ sentence }) => sentence.en),
    ).toEqual(['Lifeline 0.1689 in thick at 25 ft from the hook; the manufacturer’s minimum is 0.1693 in.']);
  });

  test('is read near the hook, midway and near full payout (common practice, no source)', () => {
    expect(fault(diameters([1, 4.8], [7, 4.8], [14, 4.8]))).toBeUndefined();
    for (const readings of [
      diameters(),
      diameters([1, 4.8], [7, 4.8]),
      diameters([1, 4.8], [2, 4.8], [14, 4.8]),
    ]) {
      expect(fault(readings)).toBe('diameter-places');
      expect(verdictOfReadings(readings)).toMatchObject({
        kind: 'incomplete',
        unanswered: [diameterCheck.key],
      });
    }
  });

  test('is asked again where it cannot be: nothing, more than twice the nominal, or beyond the lifeline', () => {
    expect(fault(diameters([1, 0], [7, 4.8], [14, 4.8]))).toBe('diameter-impossible');
    expect(fault(diameters([1, 9.61], [7, 4.8], [14, 4.8]))).toBe('diameter-impossible');
    expect(fault(diameters([1, 9.6], [7, 4.8], [14, 4.8]))).toBeUndefined();
    expect(fault(diameters([1, 4.8], [7, 4.8], [15.25, 4.8]))).toBe('position-beyond-lifeline');
  });

  test('decides nothing, and need not be read, where the model sheet gives no minimum', () => {
    expect(fault(diameters(), withoutMinimum)).toBeUndefined();
    expect(verdictOfReadings(diameters(), withoutMinimum).kind).toBe('pass');
    expect(verdictOfReadings(diameters([3, 2.5]), withoutMinimum).kind).toBe('pass');
    expect(fault(diameters([3, 11]), withoutMinimum)).toBe('diameter-impossible');
  });

  test('is no question of a walk that began before it was one', () => {
    const earlier = procedureVersion(1);
    const { [diameterCheck.key]: _readings, ...answers } = goodAnswers(fiftyFeet);
    expect(earlier.checks.some(({ key }) => key === diameterCheck.key)).toBe(false);
    expect(verdictOf(earlier, answers, facts, 'm').kind).toBe('pass');
  });
});
