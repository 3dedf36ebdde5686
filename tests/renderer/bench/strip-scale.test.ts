import { describe, expect, it } from 'vitest';
import { nudged, positionAt, stripTicks, typedPosition } from '../../../renderer/drawing/strip-scale.ts';
import { metres } from '../../../src/domain/brand.ts';

// 1 ft = 0.3048 m exactly (NIST SP 811), so 50 ft = 15.24 m.
const fiftyFeet = metres(15.24);

const numbered = (lengthM: number, unit: 'm' | 'ft'): (number | undefined)[] =>
  stripTicks(metres(lengthM), unit)
    .map(({ value }) => value)
    .filter((value) => value !== undefined);

describe('the ticks of the lifeline strip', () => {
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
    const middle = stripTicks(fiftyFeet, 'ft').find(({ value }) => value === 25);
    expect(middle?.fraction).toBeCloseTo(0.5, 9);
  });

  it('never give more than eleven numbers, whatever the length', () => {
    for (const lengthM of [1, 2, 3.5, 6, 9, 15.24, 20, 30, 60, 200]) {
      for (const unit of ['m', 'ft'] as const) expect(numbered(lengthM, unit).length).toBeLessThanOrEqual(11);
    }
  });
});

describe('a touch on the lifeline strip', () => {
  it('lands on the nearest half foot', () => {
    // 0.213 of 50 ft is 10.65 ft; the nearest half foot is 10.5 ft = 3.2004 m.
    expect(positionAt(0.213, fiftyFeet, 'ft')).toBeCloseTo(3.2004, 9);
  });

  it('lands on the nearest tenth of a metre', () => {
    // 0.213 of 15.24 m is 3.246 m.
    expect(positionAt(0.213, fiftyFeet, 'm')).toBeCloseTo(3.2, 9);
  });

  it('stays on the lifeline when the finger slides off either end', () => {
    expect(positionAt(-0.2, fiftyFeet, 'm')).toBe(0);
    expect(positionAt(1.4, fiftyFeet, 'm')).toBe(15.24);
  });
});

describe('an arrow key on the lifeline strip', () => {
  it('starts from the hook where there is no place yet', () => {
    expect(nudged(undefined, 1, 'fine', fiftyFeet, 'm')).toBeCloseTo(0.1, 9);
  });

  it('moves by five feet in large steps', () => {
    // 10 ft + 5 ft = 15 ft = 4.572 m.
    expect(nudged(metres(3.048), 1, 'coarse', fiftyFeet, 'ft')).toBeCloseTo(4.572, 9);
  });

  it('does not go past the hook or the housing', () => {
    expect(nudged(metres(0), -1, 'coarse', fiftyFeet, 'm')).toBe(0);
    expect(nudged(fiftyFeet, 1, 'fine', fiftyFeet, 'm')).toBe(15.24);
  });
});

describe('the number of a place', () => {
  it('is written as a person would type it, in the unit of the station', () => {
    expect(typedPosition(metres(3.2004), 'ft')).toBe('10.5');
    expect(typedPosition(metres(3.2), 'm')).toBe('3.2');
    expect(typedPosition(metres(7), 'm')).toBe('7');
  });
});
