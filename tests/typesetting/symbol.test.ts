import { describe, expect, test } from 'vitest';
import { encodeSymbol, moduleDots } from '../../src/typesetting/symbol.ts';

/**
 * The least number of symbol characters for capitals and digits, by dynamic programming over code sets B and C: one
 * character each in B, one for two digits in C, one for a change of code set (ISO/IEC 15417).
 */
const leastCharacters = (text: string): number => {
  const cost = (at: number, set: 'B' | 'C'): number => {
    if (at === text.length) return 0;
    const inB = 1 + cost(at + 1, 'B') + (set === 'B' ? 0 : 1);
    const twoDigits = /^\d\d/.test(text.slice(at));
    const inC = twoDigits ? 1 + cost(at + 2, 'C') + (set === 'C' ? 0 : 1) : Number.POSITIVE_INFINITY;
    return Math.min(inB, inC);
  };
  return Math.min(cost(0, 'B'), cost(0, 'C'));
};

describe('Code 128', () => {
  test.each([
    'K7M3X43SXJ',
    'ABCDEFGHJK',
    '0123456789',
    '123456ABCD',
    'AB12345678',
    'A123456B7C',
    'XCGOOD',
    'XC0',
  ])('is 11 modules per character and 35 for start, check and stop wide (ISO/IEC 15417): %s', (text) => {
    expect(encodeSymbol('Code 128', text).columns).toBe(11 * leastCharacters(text) + 35);
  });
});

describe('matrix symbols', () => {
  test('a QR Code of 42 to 50 alphanumeric characters at level H is version 4, of 51 to 64 version 5 (ISO/IEC 18004 table 7)', () => {
    const side = (length: number): number => encodeSymbol('QR Code', 'A'.repeat(length)).columns;
    // Version v is 17 + 4 v modules wide.
    expect([side(42), side(50), side(51), side(64)]).toEqual([33, 33, 37, 37]);
  });

  test('a Data Matrix of a bench ID is 14 or 16 modules wide (ISO/IEC 16022 table 7: 8 and 12 codewords)', () => {
    expect([14, 16]).toContain(encodeSymbol('Data Matrix', 'K7M3X43SXJ').columns);
    // Ten digits are five codewords in ASCII encodation: 12 × 12 modules.
    expect(encodeSymbol('Data Matrix', '0123456789').columns).toBe(12);
  });
});

describe('the width of a module', () => {
  const bars = encodeSymbol('Code 128', 'K7M3X43SXJ');

  test('is the most whole dots that fit with the quiet zone', () => {
    // 145 modules and twice 10 X are 165; at 300 dpi five dots are 0.4233 mm, so 69.85 mm.
    expect(moduleDots(bars, 69.86, 1, 300)).toBe(5);
    expect(moduleDots(bars, 69.84, 1, 300)).toBe(4);
  });

  test('is never more than preferred', () => {
    expect(moduleDots(bars, 500, 0.45, 300)).toBe(5);
  });

  test('has no answer where the minimum does not fit', () => {
    // 0.25 mm is three dots of 0.0847 mm: 165 × 0.254 mm = 41.91 mm.
    expect(moduleDots(bars, 41.92, 1, 300)).toBe(3);
    expect(moduleDots(bars, 41.9, 1, 300)).toBeUndefined();
  });
});
