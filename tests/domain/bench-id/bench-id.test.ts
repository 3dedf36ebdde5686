import { GenericGF, ReedSolomonEncoder } from '@zxing/library';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  benchIdAlphabet,
  benchIdFrom,
  formatBenchId,
  parseBenchId,
  repairBenchId,
} from '../../../src/domain/bench-id/bench-id.ts';
import { type BenchId, benchIdSchema } from '../../../src/domain/brand.ts';
import { distance, positionSets, sampleOfData, sixSymbols, withErrors } from './word-damage.ts';

/** Independent of the code under test: the check symbols come from @zxing/library. */
const encoder = new ReedSolomonEncoder(new GenericGF(0b100101, 32, 1));
const expectedId = (data: readonly number[]): string => {
  const word = Int32Array.from([...data, 0, 0, 0, 0]);
  encoder.encode(word, 4);
  return textOf([...word]);
};
const textOf = (symbols: readonly number[]): string =>
  symbols.map((value) => benchIdAlphabet[value]).join('');
const symbolsOf = (text: string): number[] =>
  [...text].map((character) => benchIdAlphabet.indexOf(character));
const withMarks = (text: string, positions: readonly number[], mark = '?'): string =>
  [...text].map((character, position) => (positions.includes(position) ? mark : character)).join('');

const sampleIds = (size: number): readonly BenchId[] => sampleOfData(size).map(benchIdFrom);
const benchIds = sixSymbols.map(benchIdFrom);

describe('a new bench ID', () => {
  it('has the check characters that an independent encoder gives', () => {
    fc.assert(
      fc.property(sixSymbols, (data) => {
        expect(benchIdFrom(data)).toBe(expectedId(data));
      }),
      { numRuns: 2000 },
    );
  });

  it('has the stored form: ten characters, none of them I, L, O or U', () => {
    fc.assert(
      fc.property(benchIds, (id) => {
        expect(benchIdSchema.safeParse(id).success).toBe(true);
      }),
    );
  });

  it.each([
    ['five symbols', [1, 2, 3, 4, 5]],
    ['seven symbols', [1, 2, 3, 4, 5, 6, 7]],
    ['a symbol over 31', [1, 2, 3, 4, 5, 32]],
    ['a fraction', [1, 2, 3, 4, 5, 0.5]],
  ])('is not made from %s', (_, data) => {
    expect(() => benchIdFrom(data)).toThrow(RangeError);
  });
});

describe('a bench ID shown to people', () => {
  it('is split by a hyphen after the fifth character', () => {
    const id = benchIdFrom(symbolsOf('K7M3X4'));
    expect(formatBenchId(id)).toBe(`K7M3X-4${expectedId(symbolsOf('K7M3X4')).slice(6)}`);
  });

  it('is read back exactly, by the exact reader and by repair alike', () => {
    fc.assert(
      fc.property(benchIds, (id) => {
        expect(parseBenchId(formatBenchId(id))).toEqual({ kind: 'exact', id });
        expect(repairBenchId(formatBenchId(id))).toEqual({ kind: 'exact', id });
      }),
    );
  });
});

describe('reading a bench ID exactly', () => {
  it('does not mind small letters, spaces, hyphens and dashes anywhere', () => {
    const separators = fc.array(
      fc.constantFrom('', ' ', '-', '\t', '\u00a0', '\u2011', '\u2013', '\u2212', '\r\n'),
      {
        minLength: 11,
        maxLength: 11,
      },
    );
    fc.assert(
      fc.property(benchIds, separators, (id, between) => {
        const text =
          [...id.toLowerCase()].map((character, i) => between[i] + character).join('') + between[10];
        expect(parseBenchId(text)).toEqual({ kind: 'exact', id });
      }),
    );
  });

  it('takes I and L, large or small, for 1 and O for 0', () => {
    const ones = fc.constantFrom('1', 'I', 'i', 'L', 'l');
    const zeros = fc.constantFrom('0', 'O', 'o');
    const fromZerosAndOnes = fc.array(fc.constantFrom(0, 1), { minLength: 6, maxLength: 6 }).map(benchIdFrom);
    fc.assert(
      fc.property(fromZerosAndOnes, ones, zeros, (id, one, zero) => {
        const text = id.replaceAll('1', one).replaceAll('0', zero);
        expect(parseBenchId(text)).toEqual({ kind: 'exact', id });
        expect(repairBenchId(text)).toEqual({ kind: 'exact', id });
      }),
    );
  });

  it('refuses every ID with one to four other characters in it', () => {
    const errors = fc.array(fc.integer({ min: 1, max: 31 }), { minLength: 4, maxLength: 4 });
    const positions = fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7, 8, 9], { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(benchIds, positions, errors, (id, at, added) => {
        expect(parseBenchId(textOf(withErrors(symbolsOf(id), at, added)))).toEqual({
          kind: 'not a codeword',
        });
      }),
      { numRuns: 5000 },
    );
  });

  it.each([
    ['nothing', '', 'too short'],
    ['separators alone', ' - ', 'too short'],
    ['nine characters', '000000000', 'too short'],
    ['eleven characters', '00000000000', 'too long'],
    ['the letter U', '000000000U', 'character not used'],
    ['a question mark', '000000000?', 'character not used'],
    ['a letter with an accent', '00000000Á0', 'character not used'],
    ['a dotless i, whose capital is I', '000000000ı', 'character not used'],
    ['full-width digits', '\uff10'.repeat(10), 'character not used'],
    ['a character outside the basic plane', '000000000😀', 'character not used'],
    ['the text of a QR symbol', 'SRL H4RP 0000000000 TAG3 PASS', 'too long'],
  ])('calls %s malformed and says why', (_, text, why) => {
    expect(parseBenchId(text)).toEqual({ kind: 'malformed', why });
  });

  it('gives a value for any text at all', () => {
    const kinds = ['exact', 'not a codeword', 'malformed'];
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(kinds).toContain(parseBenchId(text).kind);
      }),
    );
  });
});

describe('repairing a worn or mistyped bench ID', () => {
  it('restores one to four unreadable characters, wherever they are', () => {
    for (const id of sampleIds(30)) {
      for (const size of [1, 2, 3, 4]) {
        for (const positions of positionSets(10, size)) {
          const repaired = repairBenchId(withMarks(id, positions));
          const good =
            repaired.kind === 'suggestion' &&
            repaired.id === id &&
            repaired.contradicted.length === 0 &&
            distance(repaired.changed, positions) === 0 &&
            repaired.changed.length === size;
          if (!good) expect.fail(`${id} at ${positions}: ${JSON.stringify(repaired)}`);
        }
      }
    }
  });

  it('restores every single wrong character', () => {
    for (const id of sampleIds(20)) {
      for (const position of Array.from(id).keys()) {
        for (let error = 1; error < 32; error += 1) {
          expect(repairBenchId(textOf(withErrors(symbolsOf(id), [position], [error])))).toEqual({
            kind: 'suggestion',
            id,
            changed: [position],
            contradicted: [position],
          });
        }
      }
    }
  });

  it('restores every pair of wrong characters', () => {
    for (const id of sampleIds(4)) {
      for (const positions of positionSets(10, 2)) {
        for (let first = 1; first < 32; first += 1) {
          for (let second = 1; second < 32; second += 1) {
            const repaired = repairBenchId(textOf(withErrors(symbolsOf(id), positions, [first, second])));
            const good =
              repaired.kind === 'suggestion' &&
              repaired.id === id &&
              distance(repaired.changed, positions) === 0;
            if (!good) expect.fail(`${id} at ${positions}: ${JSON.stringify(repaired)}`);
          }
        }
      }
    }
  });

  it('restores one wrong character beside one or two unreadable ones', () => {
    for (const id of sampleIds(10)) {
      for (const [wrong, ...marked] of [...positionSets(10, 2), ...positionSets(10, 3)].flatMap(rotations)) {
        for (const error of [1, 17, 31]) {
          const text = withMarks(textOf(withErrors(symbolsOf(id), [wrong!], [error])), marked);
          expect(repairBenchId(text)).toEqual({
            kind: 'suggestion',
            id,
            changed: [wrong!, ...marked].sort((left, right) => left - right),
            contradicted: [wrong],
          });
        }
      }
    }
  });

  it('restores two neighbouring characters that were typed in the wrong order', () => {
    for (const id of sampleIds(50)) {
      for (let i = 0; i < 9; i += 1) {
        const swapped = `${id.slice(0, i)}${id[i + 1]}${id[i]}${id.slice(i + 2)}`;
        expect(repairBenchId(swapped)).toMatchObject({ kind: swapped === id ? 'exact' : 'suggestion', id });
      }
    }
  });

  it('never calls an ID with one to four wrong characters exact, and never suggests the right one for three or four', () => {
    const errors = fc.array(fc.integer({ min: 1, max: 31 }), { minLength: 4, maxLength: 4 });
    const positions = fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7, 8, 9], { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(benchIds, positions, errors, (id, at, added) => {
        const repaired = repairBenchId(textOf(withErrors(symbolsOf(id), at, added)));
        expect(repaired.kind).not.toBe('exact');
        if (at.length > 2 && repaired.kind === 'suggestion') expect(repaired.id).not.toBe(id);
      }),
      { numRuns: 5000 },
    );
  });

  it('gives up on five unreadable characters, and on a wrong one beside three or more', () => {
    const id = benchIdFrom([1, 2, 3, 4, 5, 6]);
    expect(repairBenchId(withMarks(id, [0, 2, 4, 6, 8]))).toEqual({ kind: 'beyond repair' });
    for (let error = 1; error < 32; error += 1) {
      const wrong = textOf(withErrors(symbolsOf(id), [9], [error]));
      expect(repairBenchId(withMarks(wrong, [0, 1, 2]))).toEqual({ kind: 'beyond repair' });
    }
  });

  it.each(['?', '*', '_', 'U', 'u'])('takes %s for a character that cannot be read', (mark) => {
    const [id] = sampleIds(1);
    expect(repairBenchId(withMarks(id!, [3, 7], mark))).toEqual({
      kind: 'suggestion',
      id,
      changed: [3, 7],
      contradicted: [],
    });
  });

  it.each([
    ['a date', '24/11/2026', 'character not used'],
    ['a letter of no bench ID', '00000Ñ0000', 'character not used'],
    ['too few characters', '0000?', 'too short'],
    ['too many characters', '00000-00000-?', 'too long'],
  ])('calls %s malformed and says why', (_, text, why) => {
    expect(repairBenchId(text)).toEqual({ kind: 'malformed', why });
  });

  it('gives, for any text at all, a value whose ID is an exact one', () => {
    const almost = fc.string({
      unit: fc.constantFrom(...benchIdAlphabet, '?', 'U', '-', 'o'),
      minLength: 9,
      maxLength: 11,
    });
    fc.assert(
      fc.property(fc.oneof(almost, fc.string({ unit: 'binary' })), (text) => {
        const repaired = repairBenchId(text);
        if (repaired.kind === 'exact' || repaired.kind === 'suggestion') {
          expect(parseBenchId(repaired.id)).toEqual({ kind: 'exact', id: repaired.id });
          expect(repaired.kind === 'exact').toBe(parseBenchId(text).kind === 'exact');
        }
      }),
      { numRuns: 5000 },
    );
  });
});

const rotations = (positions: readonly number[]): readonly (readonly number[])[] =>
  positions.map((_, i) => [...positions.slice(i), ...positions.slice(0, i)]);
