/** Reed–Solomon codes: check symbols for a word, and the nearest codeword to a word with wrong and unreadable symbols. */
import type { GaloisField } from './galois-field.ts';
import {
  addMultiple,
  derivative,
  evaluatePolynomial,
  multiplyPolynomials,
  type Polynomial,
} from './polynomial.ts';

export interface ReedSolomonParameters {
  readonly field: GaloisField;
  readonly checkSymbols: number;
  /** The exponent b of the first of the consecutive roots α^b … α^(b + checkSymbols − 1) of the generator. */
  readonly firstRoot: number;
}

export type Decoding =
  | {
      readonly ok: true;
      readonly codeword: readonly number[];
      /** Positions of the symbols that were delivered wrong, ascending; the erased ones are not among them. */
      readonly corrected: readonly number[];
    }
  | {
      readonly ok: false;
      /** `malformed`: not a word of this code at all. `beyond repair`: no codeword within 2·errors + erasures ≤ checks. */
      readonly why: 'malformed' | 'beyond repair';
    };

/**
 * A systematic Reed–Solomon code, full length or shortened; immutable.
 *
 * A word is the data symbols followed by the check symbols, highest power of x first: position i of n belongs to
 * x^(n − 1 − i). Every word of `checkSymbols` + 1 to `field.size` − 1 symbols belongs to the code so shortened.
 * Two codewords of one length differ in at least `checkSymbols` + 1 places.
 *
 * Convention and encoder as in C. K. P. Clarke, "Reed-Solomon error correction", BBC R&D White Paper WHP 031 (2002);
 * errors-and-erasures decoding (Berlekamp–Massey started from the erasure locator, Forney's formula for the values) as in
 * R. E. Blahut, "Theory and Practice of Error Control Codes" (1983), from memory.
 */
export class ReedSolomonCode {
  readonly field: GaloisField;
  readonly checkSymbols: number;
  readonly firstRoot: number;
  /** Highest power first, without the leading 1. */
  readonly #generatorTail: readonly number[];

  /** Throws `RangeError` where the field has no room for one data symbol beside the checks, or a number is no integer. */
  constructor({ field, checkSymbols, firstRoot }: ReedSolomonParameters) {
    if (!Number.isInteger(checkSymbols) || checkSymbols < 1 || checkSymbols > field.size - 2) {
      throw new RangeError(`The check symbols must number 1 to ${field.size - 2}.`);
    }
    if (!Number.isInteger(firstRoot)) throw new RangeError('The first root must be an integer exponent.');
    this.field = field;
    this.checkSymbols = checkSymbols;
    this.firstRoot = firstRoot;
    let generator: Polynomial = [1];
    for (let i = 0; i < checkSymbols; i += 1) {
      generator = multiplyPolynomials(field, generator, [field.power(firstRoot + i), 1]);
    }
    this.#generatorTail = Object.freeze(generator.slice(0, -1).reverse());
    Object.freeze(this);
  }

  /**
   * The codeword of 1 to `field.size` − 1 − `checkSymbols` data symbols: the data and then the check symbols.
   * Throws `RangeError` where the data has another length or holds a number that is not an element of the field.
   */
  encode(data: readonly number[]): readonly number[] {
    const { field, checkSymbols } = this;
    if (data.length < 1 || data.length > field.size - 1 - checkSymbols) {
      throw new RangeError(`The data must have 1 to ${field.size - 1 - checkSymbols} symbols.`);
    }
    if (!data.every((symbol) => field.contains(symbol))) {
      throw new RangeError(`Every data symbol must be an integer from 0 to ${field.size - 1}.`);
    }
    const checks = data.reduce<readonly number[]>(
      (remainder, symbol) => {
        const feedback = field.add(symbol, remainder[0] ?? 0);
        return this.#generatorTail.map((tap, i) =>
          field.add(remainder[i + 1] ?? 0, field.multiply(feedback, tap)),
        );
      },
      this.#generatorTail.map(() => 0),
    );
    return [...data, ...checks];
  }

  /** Whether the word is a codeword; false, too, for a wrong length and for numbers that are not symbols. */
  isCodeword(word: readonly number[]): boolean {
    return this.#isWord(word, new Set()) && this.#syndromes(word).every((syndrome) => syndrome === 0);
  }

  /**
   * The one codeword for which 2 · (wrong symbols) + (erased symbols) ≤ `checkSymbols`, or the reason why there is none.
   * Never throws, whatever the numbers are.
   *
   * `erasures` are the positions (from 0) of symbols known to be unreadable; what stands there is ignored. The answer is
   * always a codeword, but with more damage than that bound it can be a *wrong* codeword: nothing in the word tells.
   */
  decode(received: readonly number[], erasures: readonly number[] = []): Decoding {
    const { field, checkSymbols } = this;
    const erased = new Set(erasures);
    if (!this.#isWord(received, erased)) return { ok: false, why: 'malformed' };
    if (erased.size > checkSymbols) return { ok: false, why: 'beyond repair' };

    const word = received.map((symbol, position) => (erased.has(position) ? 0 : symbol));
    const syndromes = this.#syndromes(word);
    if (syndromes.every((syndrome) => syndrome === 0)) return { ok: true, codeword: word, corrected: [] };

    const locators = word.map((_, position) => field.power(word.length - 1 - position));
    const erasureLocator = locators
      .filter((_, position) => erased.has(position))
      .reduce<Polynomial>((product, locator) => multiplyPolynomials(field, product, [1, locator]), [1]);
    const { locator, count } = this.#errataLocator(syndromes, erasureLocator);
    if (2 * (count - erased.size) + erased.size > checkSymbols) return { ok: false, why: 'beyond repair' };

    const evaluator = multiplyPolynomials(field, syndromes, locator, checkSymbols);
    const slope = derivative(locator);
    const codeword = [...word];
    const located: number[] = [];
    for (const [position, symbol] of word.entries()) {
      const root = field.inverse(locators[position] ?? 0);
      if (evaluatePolynomial(field, locator, root) !== 0) continue;
      const slopeAtRoot = evaluatePolynomial(field, slope, root);
      if (slopeAtRoot === 0) return { ok: false, why: 'beyond repair' };
      const value = field.divide(evaluatePolynomial(field, evaluator, root), slopeAtRoot);
      const shift = field.power((word.length - 1 - position) * (1 - this.firstRoot));
      codeword[position] = field.add(symbol, field.multiply(value, shift));
      located.push(position);
    }
    if (!this.isCodeword(codeword)) return { ok: false, why: 'beyond repair' };
    return { ok: true, codeword, corrected: located.filter((position) => !erased.has(position)) };
  }

  #isWord(word: readonly number[], erased: ReadonlySet<number>): boolean {
    return (
      word.length > this.checkSymbols &&
      word.length < this.field.size &&
      word.every((symbol, position) => erased.has(position) || this.field.contains(symbol)) &&
      [...erased].every((position) => Number.isInteger(position) && position >= 0 && position < word.length)
    );
  }

  /** The word's values at the roots of the generator; all zero for a codeword and only then. */
  #syndromes(word: readonly number[]): Polynomial {
    const { field } = this;
    return Array.from({ length: this.checkSymbols }, (_, i) => {
      const root = field.power(this.firstRoot + i);
      return word.reduce((value, symbol) => field.add(field.multiply(value, root), symbol), 0);
    });
  }

  /** The polynomial whose roots are the inverse locators of errors and erasures, and how many those should be. */
  #errataLocator(syndromes: Polynomial, erasureLocator: Polynomial): { locator: Polynomial; count: number } {
    const { field, checkSymbols } = this;
    const erasures = erasureLocator.length - 1;
    let locator = erasureLocator;
    let previous = erasureLocator;
    let count = erasures;
    for (let step = erasures + 1; step <= checkSymbols; step += 1) {
      const discrepancy = locator.reduce(
        (sum, coefficient, i) => field.add(sum, field.multiply(coefficient, syndromes[step - 1 - i] ?? 0)),
        0,
      );
      const shifted = [0, ...previous];
      const next = addMultiple(field, locator, discrepancy, shifted);
      if (discrepancy !== 0 && 2 * count <= step + erasures - 1) {
        const scale = field.inverse(discrepancy);
        previous = locator.map((coefficient) => field.multiply(coefficient, scale));
        count = step + erasures - count;
      } else {
        previous = shifted;
      }
      locator = next;
    }
    return { locator, count };
  }
}
