import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GaloisField } from '../../../src/domain/bench-id/galois-field.ts';
import {
  addMultiple,
  derivative,
  evaluatePolynomial,
  multiplyPolynomials,
} from '../../../src/domain/bench-id/polynomial.ts';

const field = new GaloisField(0b100101);
const element = fc.integer({ min: 0, max: 31 });
const polynomial = fc.array(element, { minLength: 1, maxLength: 6 });

describe('polynomials over a field', () => {
  it('have a product whose value anywhere is the product of the values', () => {
    fc.assert(
      fc.property(polynomial, polynomial, element, (left, right, at) => {
        expect(evaluatePolynomial(field, multiplyPolynomials(field, left, right), at)).toBe(
          field.multiply(evaluatePolynomial(field, left, at), evaluatePolynomial(field, right, at)),
        );
      }),
    );
  });

  it('have a product cut to so many terms that begins like the whole product', () => {
    fc.assert(
      fc.property(polynomial, polynomial, (left, right) => {
        const whole = multiplyPolynomials(field, left, right);
        expect(multiplyPolynomials(field, left, right, 3)).toEqual([0, 1, 2].map((i) => whole[i] ?? 0));
      }),
    );
  });

  it('add a multiple term by term', () => {
    fc.assert(
      fc.property(polynomial, element, polynomial, element, (left, factor, right, at) => {
        expect(evaluatePolynomial(field, addMultiple(field, left, factor, right), at)).toBe(
          evaluatePolynomial(field, left, at) ^ field.multiply(factor, evaluatePolynomial(field, right, at)),
        );
      }),
    );
  });

  it('have a derivative that follows the product rule', () => {
    fc.assert(
      fc.property(polynomial, polynomial, element, (left, right, at) => {
        const value = (of: readonly number[]) => evaluatePolynomial(field, of, at);
        expect(value(derivative(multiplyPolynomials(field, left, right)))).toBe(
          field.multiply(value(derivative(left)), value(right)) ^
            field.multiply(value(left), value(derivative(right))),
        );
      }),
    );
  });

  it('take their value at an element term by term, constant first', () => {
    // By hand, 3 + x² at x = α⁴ = 16: α⁵ = α² + 1, so α⁸ = α⁵ + α³ = α³ + α² + 1 = 13, and 3 + 13 = 14.
    expect(evaluatePolynomial(field, [3, 0, 1], 16)).toBe(14);
  });
});
