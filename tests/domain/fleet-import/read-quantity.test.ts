/** Lengths, diameters and weights of lists. */
import { describe, expect, test } from 'vitest';
import type { ImportUnit } from '../../../src/domain/fleet-import/column-meaning.ts';
import {
  diameterBounds,
  lengthBounds,
  readQuantity,
  readRange,
} from '../../../src/domain/fleet-import/read-quantity.ts';
import { valueWords } from '../../support/import-words.ts';

const lengthUnits = ['m', 'ft', 'cm', 'mm', 'in'] as const;
const lengthOf = (text: string, unit?: ImportUnit) =>
  readQuantity(text, lengthBounds, unit, lengthUnits, valueWords);

/**
 * Metres worked out by hand from NIST Special Publication 811, appendix B.8: 1 ft = 0.3048 m and 1 in = 25.4 mm, exactly.
 * The decimal marks are those of ISO 80000-1 §7.3.2, comma or point; spaces and marks between groups of three are common
 * practice, no source.
 */
const lengths: readonly (readonly [string, ImportUnit | undefined, number])[] = [
  ['6.1 m', undefined, 6.1],
  ['6,1m', undefined, 6.1],
  ['6,10', 'm', 6.1],
  ['6.10', 'm', 6.1],
  ['610 cm', undefined, 6.1],
  ['6100 mm', undefined, 6.1],
  ['6.100 mm', undefined, 6.1],
  ['6,100 mm', undefined, 6.1],
  ['6 100 mm', undefined, 6.1],
  ['6’100 mm', undefined, 6.1],
  ['6.100', 'm', 6.1],
  ['1,500 cm', undefined, 15],
  ['20 ft', undefined, 6.096],
  ['20 ft.', undefined, 6.096],
  ['20 FEET', undefined, 6.096],
  ['20 pies', undefined, 6.096],
  ["20'", undefined, 6.096],
  ['20′', undefined, 6.096],
  ['20’', undefined, 6.096],
  ['20', 'ft', 6.096],
  ['20\' 6"', undefined, 6.2484],
  ['20\'6"', undefined, 6.2484],
  ['20′ 6″', undefined, 6.2484],
  ["20' 6''", undefined, 6.2484],
  ['20 ft 6 in', undefined, 6.2484],
  ['20ft6in', undefined, 6.2484],
  ['20 ft 6 1/2 in', undefined, 6.2611],
  ['20 ft. 6½ in.', undefined, 6.2611],
  ['20 pies 6 pulgadas', undefined, 6.2484],
  ['20.5 ft', undefined, 6.2484],
  ['6 1/2 ft', undefined, 1.9812],
  ['6½ ft', undefined, 1.9812],
  ['240 in', undefined, 6.096],
  ['240"', undefined, 6.096],
  ['50 ft', 'm', 15.24],
  ['15,24 metros', undefined, 15.24],
  ['\u00a015,24\u202fm ', undefined, 15.24],
];

test.each(lengths)('the length %j of a column in %s is %d m', (text, unit, value) => {
  expect(lengthOf(text, unit)).toEqual({ kind: 'quantity', value });
});

test.each(['6', '6,1', '6 1/2', '20.0'])('the length %j needs the unit of its column', (text) => {
  expect(lengthOf(text)).toEqual({ kind: 'unit needed' });
});

test.each([
  'six metres',
  '6 yd',
  '6 kg',
  '0 m',
  '6000 m',
  '-6 m',
  '6..1 m',
  '6,1,2 m',
  '1,23,456 mm',
  '6/0 ft',
  '20 ft 13 in',
  '20.5 ft 6 in',
  '20 ft 6 m',
  '1e1 m',
  '∞ m',
  '',
])('%j is no length', (text) => {
  expect(lengthOf(text, 'm')).toEqual({ kind: 'not read' });
});

/** 3/16 in = 4.7625 mm, from 1 in = 25.4 mm. */
test.each([
  ['4.8 mm', 4.8],
  ['4,8', 4.8],
  ['4,763 mm', 4.763],
  ['3/16"', 4.7625],
  ['3/16 in', 4.7625],
  ['0.1875 inch', 4.7625],
] as const)('the diameter %j is %d mm', (text, millimetres) => {
  const read = readQuantity(text, diameterBounds, 'mm', ['mm', 'in'], valueWords);
  expect(read.kind === 'quantity' && Math.round(read.value * 1e7) / 1e4).toBe(millimetres);
});

/** NIST Special Publication 811, appendix B.8: 1 lb = 0.453 592 37 kg; 130 lb = 58.967 008 1 kg, 310 lb = 140.613 634 7 kg. */
describe('a capacity range', () => {
  test.each([
    ['59–140 kg', 59, 140],
    ['59-140kg', 59, 140],
    ['59 kg to 140 kg', 59, 140],
    ['de 59 a 140 kg', 59, 140],
    ['59 hasta 140 kg', 59, 140],
    ['130–310 lb', 58.9670081, 140.6136347],
    ['130 lbs - 310 lbs', 58.9670081, 140.6136347],
  ] as const)('%j is %d to %d kg', (text, from, to) => {
    expect(readRange(text, undefined, valueWords)).toEqual({
      from: { kind: 'quantity', value: from },
      to: { kind: 'quantity', value: to },
    });
  });

  test('of bare numbers needs its unit, and of one number is none', () => {
    expect(readRange('59-140', undefined, valueWords).from).toEqual({ kind: 'unit needed' });
    expect(readRange('59-140', 'kg', valueWords).to).toEqual({ kind: 'quantity', value: 140 });
    expect(readRange('140 kg', undefined, valueWords).to).toEqual({ kind: 'not read' });
  });
});
