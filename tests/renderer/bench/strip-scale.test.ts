import { describe, expect, it } from 'vitest';
import { nudged, positionAt, typedPosition } from '../../../renderer/drawing/strip-scale.ts';
import { metres } from '../../../src/domain/brand.ts';

// 1 ft = 0.3048 m exactly (NIST SP 811), so 50 ft = 15.24 m.
const fiftyFeet = metres(15.24);

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
