/** Arithmetic in a finite field GF(2^m), whose elements are the integers 0 to 2^m − 1 read as polynomials over GF(2). */

/**
 * GF(2^m), given by a primitive polynomial of degree m; immutable.
 *
 * The polynomial is an integer whose bits are its coefficients: `0b100101` is x⁵ + x² + 1 and gives GF(32). The
 * generator α is the element 2, so that α^0 … α^(2^m − 2) are all elements but zero. Every operation takes elements;
 * `contains` says which numbers are. Logarithm tables as in
 * R. E. Blahut, "Theory and Practice of Error Control Codes" (1983), from memory.
 */
export class GaloisField {
  /** How many elements the field has, 2^m. */
  readonly size: number;
  readonly primitivePolynomial: number;
  readonly #power: readonly number[];
  readonly #logarithm: readonly number[];

  /** Throws `RangeError` where the polynomial is not a primitive one of degree 2 to 16. */
  constructor(primitivePolynomial: number) {
    if (!Number.isInteger(primitivePolynomial) || primitivePolynomial < 4 || primitivePolynomial >= 2 ** 17) {
      throw new RangeError('The primitive polynomial must have degree 2 to 16.');
    }
    this.size = 2 ** (31 - Math.clz32(primitivePolynomial));
    this.primitivePolynomial = primitivePolynomial;
    const power: number[] = [];
    const logarithm = new Array<number>(this.size).fill(-1);
    for (let element = 1; power.length < this.size - 1; element = this.#timesGenerator(element)) {
      if (logarithm[element] !== -1) throw new RangeError('The polynomial is not primitive.');
      logarithm[element] = power.length;
      power.push(element);
    }
    this.#power = Object.freeze(power);
    this.#logarithm = Object.freeze(logarithm);
    Object.freeze(this);
  }

  /** Whether the value is an element of the field: an integer from 0 to `size` − 1. */
  contains(value: number): boolean {
    return Number.isInteger(value) && value >= 0 && value < this.size;
  }

  /** The sum of two elements, which is also their difference. */
  add(left: number, right: number): number {
    return left ^ right;
  }

  /** The product of two elements. */
  multiply(left: number, right: number): number {
    if (left === 0 || right === 0) return 0;
    return this.power(this.logarithm(left) + this.logarithm(right));
  }

  /** The quotient of two elements; `RangeError` where the divisor is zero. */
  divide(dividend: number, divisor: number): number {
    const inverse = this.inverse(divisor);
    return this.multiply(dividend, inverse);
  }

  /** The element whose product with this one is 1; `RangeError` for zero, which has none. */
  inverse(element: number): number {
    return this.power(-this.logarithm(element));
  }

  /** α to an integer exponent of either sign. */
  power(exponent: number): number {
    const order = this.size - 1;
    const element = this.#power[((exponent % order) + order) % order];
    if (element === undefined) throw new RangeError('The exponent must be an integer.');
    return element;
  }

  /** The exponent from 0 to `size` − 2 that takes α to the element; `RangeError` for zero, which has none. */
  logarithm(element: number): number {
    const exponent = this.#logarithm[element];
    if (exponent === undefined || exponent < 0)
      throw new RangeError('Zero and non-elements have no logarithm.');
    return exponent;
  }

  #timesGenerator(element: number): number {
    const shifted = element << 1;
    return shifted < this.size ? shifted : shifted ^ this.primitivePolynomial;
  }
}
