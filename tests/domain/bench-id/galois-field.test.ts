import { GenericGF } from '@zxing/library';
import { describe, expect, it } from 'vitest';
import { GaloisField } from '../../../src/domain/bench-id/galois-field.ts';

/** Independent of tables: multiplies as polynomials over GF(2) and then divides by the primitive polynomial. */
const schoolProduct = (left: number, right: number, primitive: number): number => {
  const degreeOf = (value: number) => 31 - Math.clz32(value);
  let product = 0;
  for (let bit = 0; bit < 16; bit += 1) if ((right >> bit) & 1) product ^= left << bit;
  while (product !== 0 && degreeOf(product) >= degreeOf(primitive)) {
    product ^= primitive << (degreeOf(product) - degreeOf(primitive));
  }
  return product;
};

describe('a Galois field', () => {
  it('has the sixteen elements of BBC R&D White Paper WHP 031 in the order of their exponents', () => {
    // WHP 031, table of GF(16) with x^4 + x + 1: α^0 … α^14.
    const field = new GaloisField(0b10011);
    expect(Array.from({ length: 15 }, (_, exponent) => field.power(exponent))).toEqual([
      1, 2, 4, 8, 3, 6, 12, 11, 5, 10, 7, 14, 15, 13, 9,
    ]);
  });

  it.each([
    ['GF(16), x^4 + x + 1', 0b10011],
    ['GF(32), x^5 + x^2 + 1', 0b100101],
    ['GF(256), x^8 + x^4 + x^3 + x^2 + 1', 0x11d],
  ])('multiplies every pair in %s as polynomial long division does', (_, primitive) => {
    const field = new GaloisField(primitive);
    for (let left = 0; left < field.size; left += 1) {
      for (let right = 0; right < field.size; right += 1) {
        if (field.multiply(left, right) !== schoolProduct(left, right, primitive)) {
          expect.fail(`${left} times ${right}`);
        }
      }
    }
  });

  it('agrees with the field of @zxing/library on products and inverses over GF(32)', () => {
    const field = new GaloisField(0b100101);
    const other = new GenericGF(0b100101, 32, 1);
    for (let left = 1; left < 32; left += 1) {
      expect(field.inverse(left)).toBe(other.inverse(left));
      for (let right = 0; right < 32; right += 1) {
        expect(field.multiply(left, right)).toBe(other.multiply(left, right));
      }
    }
  });

  it('undoes a product by a quotient, and a power by a logarithm', () => {
    const field = new GaloisField(0b100101);
    for (let left = 0; left < 32; left += 1) {
      for (let right = 1; right < 32; right += 1) {
        expect(field.divide(schoolProduct(left, right, 0b100101), right)).toBe(left);
      }
    }
    for (let exponent = -31; exponent < 62; exponent += 1) {
      expect(field.logarithm(field.power(exponent))).toBe((exponent + 62) % 31);
    }
  });

  it('has no inverse and no logarithm of zero', () => {
    const field = new GaloisField(0b100101);
    expect(() => field.inverse(0)).toThrow(RangeError);
    expect(() => field.divide(3, 0)).toThrow(RangeError);
    expect(() => field.logarithm(0)).toThrow(RangeError);
  });

  it('knows which numbers are its elements', () => {
    const field = new GaloisField(0b100101);
    expect([0, 31].every((value) => field.contains(value))).toBe(true);
    expect([-1, 32, 1.5, Number.NaN, Number.POSITIVE_INFINITY].some((value) => field.contains(value))).toBe(
      false,
    );
  });

  it.each([
    ['an irreducible polynomial that is not primitive, x^4 + x^3 + x^2 + x + 1', 0b11111],
    ['a reducible polynomial, x^4 + x^2 + 1', 0b10101],
    ['a polynomial without constant term', 0b100100],
    ['a degree under 2', 0b11],
    ['a degree over 16', 2 ** 17 + 9],
    ['a number with a primitive polynomial in its low bits', 2 ** 32 + 0b10011],
    ['a fraction', 19.5],
    ['no number', Number.NaN],
  ])('refuses %s', (_, polynomial) => {
    expect(() => new GaloisField(polynomial)).toThrow(RangeError);
  });

  it('cannot be changed once made', () => {
    expect(Object.isFrozen(new GaloisField(0b100101))).toBe(true);
  });
});
