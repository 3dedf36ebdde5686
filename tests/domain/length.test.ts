import { describe, expect, test } from 'vitest';
import {
  diameterText,
  fromUnit,
  lengthText,
  parseDiameter,
  parseLength,
  toUnit,
} from '../../src/domain/length.ts';

describe('a length', () => {
  /** 1 ft = 0.3048 m exactly (NIST SP 811). */
  test('of 50 ft is 15.24 m', () => {
    expect(fromUnit(50, 'ft')).toBeCloseTo(15.24, 12);
    expect(toUnit(15.24, 'ft')).toBeCloseTo(50, 12);
  });

  test('is shown in the unit of the station with the decimal mark of the language', () => {
    expect(lengthText(15.24, 'ft', 'en')).toBe('50 ft');
    expect(lengthText(15.24, 'm', 'en')).toBe('15.24 m');
    expect(lengthText(15.24, 'm', 'es')).toBe('15,24 m');
    expect(lengthText(3.2, 'ft', 'es')).toBe('10,5 ft');
  });

  test('is typed with a comma or a point, and anything else is not a length', () => {
    expect(parseLength('3,2', 'm')).toBe(3.2);
    expect(parseLength(' 3.2 ', 'm')).toBe(3.2);
    for (const text of ['', '3.', '-1', '1e3', '3.2.1', '1234', 'x', '3 m'])
      expect(parseLength(text, 'm')).toBeUndefined();
  });
});

describe('a diameter', () => {
  /** 1 in = 25.4 mm exactly (NIST SP 811). */
  test('is typed in millimetres or in inches, with a comma or a point', () => {
    for (const text of ['4.3', '4,3', ' 4.3 mm ', '4,3mm']) expect(parseDiameter(text, 'mm')).toBe(4.3);
    for (const text of ['0.17', '.17', '0,17 in', '0.17"'])
      expect(parseDiameter(text, 'in')).toBeCloseTo(4.318, 12);
    expect(parseDiameter('4.3 mm', 'in')).toBe(4.3);
    expect(parseDiameter('0.17 in', 'mm')).toBeCloseTo(4.318, 12);
    expect(parseDiameter('0,1875"', 'mm')).toBeCloseTo(4.7625, 12);
  });

  test('is nothing else: no fraction, no sign, no other unit', () => {
    for (const text of ['', '3/16 in', '-4', '4.3 cm', '4.3.1', '1e1', '.', 'thin'])
      for (const unit of ['mm', 'in'] as const) expect(parseDiameter(text, unit)).toBeUndefined();
  });

  test('is shown to the hundredth of a millimetre or the ten-thousandth of an inch, with the decimal mark of the language', () => {
    expect(diameterText(4.318, 'm', 'en')).toBe('4.32 mm');
    expect(diameterText(4.8, 'm', 'es')).toBe('4,8 mm');
    expect(diameterText(4.318, 'ft', 'en')).toBe('0.17 in');
    expect(diameterText(4.7625, 'ft', 'es')).toBe('0,1875 in');
  });
});
