/** The ticks of a scale along a lifeline. */
import { describe, expect, it } from 'vitest';
import { metres } from '../../../src/domain/brand.ts';
import { lifelineTicks } from '../../../src/domain/lifeline/ticks.ts';

// 1 ft = 0.3048 m exactly (NIST SP 811), so 50 ft = 15.24 m.
const fiftyFeet = metres(15.24);

const numbered = (lengthM: number, unit: 'm' | 'ft'): (number | undefined)[] =>
  lifelineTicks(metres(lengthM), unit)
    .map(({ value }) => value)
    .filter((value) => value !== undefined);

describe('the ticks of a lifeline', () => {
  it('number a 50 ft lifeline by fives', () => {
    expect(numbered(15.24, 'ft')).toEqual([0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50]);
  });

  it('number a short lifeline by halves', () => {
    expect(numbered(2, 'm')).toEqual([0, 0.5, 1, 1.5, 2]);
  });

  it('end before a rated length that is no whole number of them', () => {
    expect(numbered(15.24, 'm')).toEqual([0, 2, 4, 6, 8, 10, 12, 14]);
  });

  it('stand in proportion: 25 ft of 50 ft is the middle', () => {
    const middle = lifelineTicks(fiftyFeet, 'ft').find(({ value }) => value === 25);
    expect(middle?.fraction).toBeCloseTo(0.5, 9);
  });

  it('never give more than eleven numbers, whatever the length', () => {
    for (const lengthM of [1, 2, 3.5, 6, 9, 15.24, 20, 30, 60, 200]) {
      for (const unit of ['m', 'ft'] as const) expect(numbered(lengthM, unit).length).toBeLessThanOrEqual(11);
    }
  });
});
