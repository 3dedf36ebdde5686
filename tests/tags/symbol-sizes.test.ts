import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { commandSymbols } from '../../src/domain/command-symbol.ts';
import { writeTagText } from '../../src/domain/tag-text.ts';
import { encodeSymbol } from '../../src/typesetting/symbol.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { benchId, longStatusTag, quarantineTag, statusTag } from './sample-tags.ts';

const tagTexts = [
  writeTagText(statusTag(['en'])),
  writeTagText(longStatusTag(['en'])),
  writeTagText(quarantineTag(['en'], 1)),
];

/** Alphanumeric characters that each version holds at level H (ISO/IEC 18004 table 7, from memory). */
const alphanumericAtH = [10, 20, 35, 50, 64, 84, 93, 122];

/** Side of the square symbols of ECC 200 and their data codewords (ISO/IEC 16022 table 7, from memory). */
const dataMatrixSizes = [
  [10, 3],
  [12, 5],
  [14, 8],
  [16, 12],
  [18, 18],
  [20, 22],
  [22, 30],
  [24, 36],
  [26, 44],
] as const;

const dataMatrixSide = (codewords: number): number =>
  dataMatrixSizes.find(([, capacity]) => capacity >= codewords)![0];

describe('the size of a QR Code at level H', () => {
  test.each(alphanumericAtH.map((capacity, index) => [index + 1, capacity]))(
    'is version %i up to %i alphanumeric characters, and the next one from there',
    (version, capacity) => {
      // Version v is 17 + 4 v modules wide.
      expect(encodeSymbol('QR Code', 'A'.repeat(capacity)).columns).toBe(17 + 4 * version);
      expect(encodeSymbol('QR Code', 'A'.repeat(capacity + 1)).columns).toBe(17 + 4 * (version + 1));
    },
  );

  test.each(tagTexts)('is the least that holds the text of a tag: %s', (text) => {
    expect(text).toMatch(/^[0-9A-Z $%*+\-./:]+$/);
    const version = 1 + alphanumericAtH.findIndex((capacity) => capacity >= text.length);
    expect(encodeSymbol('QR Code', text).columns).toBe(17 + 4 * version);
  });
});

describe('the size of a Data Matrix', () => {
  test('is the least that holds two digits to a codeword', () => {
    for (let digits = 2; digits <= 88; digits += 2)
      expect(encodeSymbol('Data Matrix', '7'.repeat(digits)).columns).toBe(dataMatrixSide(digits / 2));
  });

  test('is between three characters to two codewords and one to each, for capitals and digits', () => {
    const codes = fc.stringMatching(/^[0-9A-Z]{1,12}$/);
    fc.assert(
      fc.property(codes, (code) => {
        const { columns, rows } = encodeSymbol('Data Matrix', code);
        expect(rows).toBe(columns);
        expect(columns).toBeGreaterThanOrEqual(dataMatrixSide(Math.ceil(code.length / 2)));
        expect(columns).toBeLessThanOrEqual(dataMatrixSide(code.length));
      }),
      { numRuns: 60, seed: 16022 },
    );
  });
});

/** zint prints each row in hexadecimal, four modules to a digit, the first module first; spaces between bytes. */
const dumped = (args: readonly string[], columns: number): readonly string[] =>
  runTool('zint', [...args, '--dump'])
    .trim()
    .split('\n')
    .map((row) =>
      [...row.replaceAll(' ', '')]
        .map((digit) => Number.parseInt(digit, 16).toString(2).padStart(4, '0'))
        .join('')
        .slice(0, columns),
    );

const rowsOf = ({ columns, rows, dark }: ReturnType<typeof encodeSymbol>): readonly string[] =>
  Array.from({ length: rows }, (_row, row) => [...dark.slice(row * columns, (row + 1) * columns)].join(''));

/**
 * The mask of a QR Code from its format information: bits 12 to 10, in row 8 from the third module on, over the fixed
 * pattern 101 0100 0001 0010 (ISO/IEC 18004 §7.9, from memory). Encoders may weigh masks differently.
 */
const maskOf = ({ columns, dark }: ReturnType<typeof encodeSymbol>): number => {
  const bit = (column: number): number => dark[8 * columns + column]!;
  return ((bit(2) ^ 1) << 2) | ((bit(3) ^ 0) << 1) | (bit(4) ^ 1);
};

describe.runIf(requireTool('zint'))('another encoder gives the same modules', () => {
  test.each([benchId, 'RC02', 'QUARANTINE12', ...commandSymbols.map(({ text }) => text)])(
    'in Code 128: %s',
    (text) => {
      const symbol = encodeSymbol('Code 128', text);
      expect(rowsOf(symbol)).toEqual(dumped(['-b', '20', '-d', text], symbol.columns));
    },
  );

  test.each(tagTexts)('in QR Code with the same mask: %s', (text) => {
    const symbol = encodeSymbol('QR Code', text);
    const args = ['-b', '58', '--secure=4', `--mask=${maskOf(symbol)}`, '-d', text];
    expect(rowsOf(symbol)).toEqual(dumped(args, symbol.columns));
  });

  test.each(['0123456789', '20261124', '77'])('in Data Matrix, digits in pairs: %s', (text) => {
    const symbol = encodeSymbol('Data Matrix', text);
    expect(rowsOf(symbol)).toEqual(dumped(['-b', '71', '--square', '-d', text], symbol.columns));
  });

  test.each([benchId, 'RC02', 'QUARANTINE12'])('or at least the same size of Data Matrix: %s', (text) => {
    const symbol = encodeSymbol('Data Matrix', text);
    expect(dumped(['-b', '71', '--square', '-d', text], symbol.columns)).toHaveLength(symbol.rows);
  });
});
