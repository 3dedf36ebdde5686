/** Polynomials over a finite field, as arrays of coefficients with the constant term first. */
import type { GaloisField } from './galois-field.ts';

export type Polynomial = readonly number[];

/** The value of the polynomial at an element of the field. */
export const evaluatePolynomial = (field: GaloisField, polynomial: Polynomial, at: number): number =>
  polynomial.reduceRight((value, coefficient) => field.add(field.multiply(value, at), coefficient), 0);

/** The product; with `terms`, only its first so many coefficients (the product modulo x^terms). */
export const multiplyPolynomials = (
  field: GaloisField,
  left: Polynomial,
  right: Polynomial,
  terms = left.length + right.length - 1,
): Polynomial =>
  Array.from({ length: terms }, (_, degree) =>
    left.reduce(
      (sum, coefficient, i) => field.add(sum, field.multiply(coefficient, right[degree - i] ?? 0)),
      0,
    ),
  );

/** left + factor · right. */
export const addMultiple = (
  field: GaloisField,
  left: Polynomial,
  factor: number,
  right: Polynomial,
): Polynomial =>
  Array.from({ length: Math.max(left.length, right.length) }, (_, degree) =>
    field.add(left[degree] ?? 0, field.multiply(factor, right[degree] ?? 0)),
  );

/** The formal derivative, which in a field of characteristic 2 keeps only the odd powers. */
export const derivative = (polynomial: Polynomial): Polynomial =>
  polynomial.slice(1).map((coefficient, degree) => (degree % 2 === 0 ? coefficient : 0));
