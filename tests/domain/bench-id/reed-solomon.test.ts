import { GenericGF, ReedSolomonDecoder, ReedSolomonEncoder } from '@zxing/library';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GaloisField } from '../../../src/domain/bench-id/galois-field.ts';
import { ReedSolomonCode } from '../../../src/domain/bench-id/reed-solomon.ts';
import { distance, positionSets, sampleOfData, sixSymbols, symbol, withErrors } from './word-damage.ts';

const field16 = new GaloisField(0b10011);
const field32 = new GaloisField(0b100101);
const whp031 = new ReedSolomonCode({ field: field16, checkSymbols: 4, firstRoot: 0 });
const code = new ReedSolomonCode({ field: field32, checkSymbols: 4, firstRoot: 1 });

describe('published examples', () => {
  // C. K. P. Clarke, BBC R&D White Paper WHP 031, RS(15, 11) over GF(16), x^4 + x + 1, first root α^0.
  const transmitted = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 3, 3, 12, 12];

  it('gives the check symbols 3, 3, 12, 12 of WHP 031 for the message 1 to 11', () => {
    expect(whp031.encode([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11])).toEqual(transmitted);
  });

  it('corrects the two errors of the worked example of WHP 031', () => {
    // The received word of the same paper: 6 became 11 and the second 3 became 1.
    expect(whp031.decode([1, 2, 3, 4, 5, 11, 7, 8, 9, 10, 11, 3, 1, 12, 12])).toEqual({
      ok: true,
      codeword: transmitted,
      corrected: [5, 12],
    });
  });

  it('gives the error correction codewords of the QR example in ISO/IEC 18004', () => {
    // Annex I, "01234567" in version 1-M, from memory; GF(256), x^8 + x^4 + x^3 + x^2 + 1, first root α^0.
    const qr = new ReedSolomonCode({ field: new GaloisField(0x11d), checkSymbols: 10, firstRoot: 0 });
    const data = [
      0x10, 0x20, 0x0c, 0x56, 0x61, 0x80, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11,
    ];
    expect(qr.encode(data).slice(16)).toEqual([0xa5, 0x24, 0xd4, 0xc1, 0xed, 0x36, 0xc7, 0x87, 0x2c, 0x55]);
  });

  it('gives the error correction codewords of the Data Matrix example in ISO/IEC 16022', () => {
    // "123456", from memory; GF(256), x^8 + x^5 + x^3 + x^2 + 1, first root α^1.
    const dataMatrix = new ReedSolomonCode({ field: new GaloisField(0x12d), checkSymbols: 5, firstRoot: 1 });
    expect(dataMatrix.encode([142, 164, 186]).slice(3)).toEqual([114, 25, 5, 88, 102]);
  });
});

describe('the encoder of @zxing/library, as an independent check', () => {
  it.each([
    [4, 0],
    [4, 1],
    [3, 1],
    [7, 1],
  ])('gives the same %i check symbols over GF(32) with first root α^%i', (checkSymbols, firstRoot) => {
    const ours = new ReedSolomonCode({ field: field32, checkSymbols, firstRoot });
    const theirs = new ReedSolomonEncoder(new GenericGF(0b100101, 32, firstRoot));
    fc.assert(
      fc.property(fc.array(symbol, { minLength: 1, maxLength: 31 - checkSymbols }), (data) => {
        const word = Int32Array.from([...data, ...new Array<number>(checkSymbols).fill(0)]);
        theirs.encode(word, checkSymbols);
        expect(ours.encode(data)).toEqual([...word]);
      }),
      { numRuns: 500 },
    );
  });
});

describe('the decoder of @zxing/library, as an independent check', () => {
  const theirEncoder = new ReedSolomonEncoder(new GenericGF(0b100101, 32, 1));
  const theirDecoder = new ReedSolomonDecoder(new GenericGF(0b100101, 32, 1));

  /** What the other decoder makes of a word, kept only where the other encoder confirms it as a codeword. */
  const theirs = (word: readonly number[]): readonly number[] | undefined => {
    const decoded = Int32Array.from(word);
    try {
      theirDecoder.decode(decoded, 4);
    } catch {
      return undefined;
    }
    const encoded = Int32Array.from([...decoded.subarray(0, 6), 0, 0, 0, 0]);
    theirEncoder.encode(encoded, 4);
    return distance(encoded, decoded) === 0 ? [...decoded] : undefined;
  };

  it('finds the same codeword, or none, for words with up to ten errors', () => {
    const errors = fc.array(fc.integer({ min: 1, max: 31 }), { minLength: 10, maxLength: 10 });
    const positions = fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    let found = 0;
    let refused = 0;
    fc.assert(
      fc.property(sixSymbols, positions, errors, (data, at, added) => {
        const word = withErrors(code.encode(data), at, added);
        const ours = code.decode(word);
        expect(ours.ok ? ours.codeword : undefined).toEqual(theirs(word));
        if (ours.ok) found += 1;
        else refused += 1;
      }),
      { numRuns: 5000, seed: 7 },
    );
    expect(found).toBeGreaterThan(500);
    expect(refused).toBeGreaterThan(500);
  });
});

describe('errors and erasures together', () => {
  const bounded = fc.record({
    checkSymbols: fc.integer({ min: 1, max: 12 }),
    firstRoot: fc.integer({ min: -3, max: 40 }),
  });

  it('are restored exactly up to 2·errors + erasures = check symbols, for any number of checks and any first root', () => {
    fc.assert(
      fc.property(
        bounded,
        fc.nat(),
        fc.nat(),
        fc.nat(),
        fc.infiniteStream(symbol),
        (shape, a, b, c, stream) => {
          const anyCode = new ReedSolomonCode({ field: field32, ...shape });
          const dataLength = 1 + (a % (31 - shape.checkSymbols));
          const next = (): number => stream.next().value;
          const codeword = anyCode.encode(Array.from({ length: dataLength }, next));
          const erasureCount = Math.min(b % (shape.checkSymbols + 1), codeword.length);
          const errorCount = Math.min(
            c % (Math.floor((shape.checkSymbols - erasureCount) / 2) + 1),
            codeword.length - erasureCount,
          );
          const shuffled = codeword
            .map((_, position) => ({ position, key: next() }))
            .sort((x, y) => x.key - y.key);
          const places = shuffled.map(({ position }) => position);
          const erasures = places.slice(0, erasureCount);
          const wrong = places.slice(erasureCount, erasureCount + errorCount);
          const damaged = withErrors(
            codeword,
            wrong,
            wrong.map(() => 1 + (next() % 31)),
          );
          for (const position of erasures) damaged[position] = next();

          const byPosition = (x: number, y: number) => x - y;
          expect(anyCode.decode(damaged, erasures)).toEqual({
            ok: true,
            codeword,
            corrected: wrong.sort(byPosition),
          });
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('are restored for each set of at most four erasures, whatever stands in the erased places', () => {
    for (const data of sampleOfData(50)) {
      const codeword = code.encode(data);
      for (const size of [1, 2, 3, 4]) {
        for (const erasures of positionSets(10, size)) {
          const damaged = codeword.map((value, position) => (erasures.includes(position) ? -7 : value));
          const decoding = code.decode(damaged, erasures);
          if (!decoding.ok || distance(decoding.codeword, codeword) !== 0)
            expect.fail(`${codeword} at ${erasures}`);
          if (decoding.corrected.length !== 0)
            expect.fail(`an erasure was reported as an error at ${erasures}`);
        }
      }
    }
  });

  it('are refused from five erasures on', () => {
    const codeword = code.encode([1, 2, 3, 4, 5, 6]);
    for (const erasures of positionSets(10, 5)) {
      expect(code.decode(codeword, erasures)).toEqual({ ok: false, why: 'beyond repair' });
    }
  });

  it('count an erasure named twice once', () => {
    const codeword = code.encode([1, 2, 3, 4, 5, 6]);
    expect(code.decode([0, 0, 0, 0, 5, 6, ...codeword.slice(6)], [0, 1, 2, 3, 3, 0])).toEqual({
      ok: true,
      codeword,
      corrected: [],
    });
  });

  it('leave a word alone or change it to a codeword within the bound, for any word and any erasures at all', () => {
    const anyWord = fc.array(symbol, { minLength: 10, maxLength: 10 });
    const positions = fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7, 8, 9], { maxLength: 5 });
    fc.assert(
      fc.property(anyWord, positions, (word, erasures) => {
        const decoding = code.decode(word, erasures);
        if (!decoding.ok) return;
        expect(decoding.codeword).toEqual(code.encode(decoding.codeword.slice(0, 6)));
        expect(2 * decoding.corrected.length + erasures.length).toBeLessThanOrEqual(4);
        const altered = word.flatMap((value, position) =>
          value === decoding.codeword[position] ? [] : [position],
        );
        expect(altered.filter((position) => !erasures.includes(position))).toEqual(decoding.corrected);
      }),
      { numRuns: 5000 },
    );
  });
});

describe('input that is no word of the code', () => {
  const word = code.encode([1, 2, 3, 4, 5, 6]);

  it.each<[string, readonly number[], readonly number[]]>([
    ['no symbols', [], []],
    ['no data symbol', [0, 0, 0, 0], []],
    ['more symbols than the field allows', new Array<number>(32).fill(0), []],
    ['a symbol that is too large', [...word.slice(0, 9), 32], []],
    ['a negative symbol', [-1, ...word.slice(1)], []],
    ['a fraction', [0.5, ...word.slice(1)], []],
    ['no number', [Number.NaN, ...word.slice(1)], []],
    ['an erasure outside the word', word, [10]],
    ['an erasure before the word', word, [-1]],
    ['an erasure between two symbols', word, [1.5]],
  ])('is a value and not an exception: %s', (_, received, erasures) => {
    expect(code.decode(received, erasures)).toEqual({ ok: false, why: 'malformed' });
  });

  it('never makes the decoder throw', () => {
    const anyNumbers = fc.array(fc.oneof(fc.double(), fc.integer(), symbol), { maxLength: 40 });
    fc.assert(
      fc.property(anyNumbers, anyNumbers, (received, erasures) => void code.decode(received, erasures)),
    );
  });

  it('is not a codeword', () => {
    expect(code.isCodeword(word)).toBe(true);
    expect(code.isCodeword(word.slice(0, 4))).toBe(false);
    expect(code.isCodeword([...word.slice(0, 9), 32])).toBe(false);
  });

  it('is refused by the encoder', () => {
    expect(() => code.encode([])).toThrow(RangeError);
    expect(() => code.encode(new Array<number>(28).fill(0))).toThrow(RangeError);
    expect(() => code.encode([32])).toThrow(RangeError);
    expect(code.encode(new Array<number>(27).fill(0))).toHaveLength(31);
  });

  it.each([
    ['no check symbols', 0, 0],
    ['no room for data', 31, 0],
    ['a fraction of a check symbol', 1.5, 0],
    ['a root between two powers', 4, 0.5],
  ])('cannot even be described: a code with %s', (_, checkSymbols, firstRoot) => {
    expect(() => new ReedSolomonCode({ field: field32, checkSymbols, firstRoot })).toThrow(RangeError);
  });
});
