/** Numbers and choices in one line. */
import { describe, expect, test } from 'vitest';
import { eitherOf, numberRanges } from '../../src/domain/listing.ts';

describe('numbers in one line', () => {
  test.each([
    [[4], '4'],
    [[1, 2], '1, 2'],
    [[1, 2, 3], '1–3'],
    [[1, 3, 4, 5, 7, 8, 12], '1, 3–5, 7, 8, 12'],
    [[2, 3, 4, 5, 6, 7, 8, 9, 10, 12], '2–10, 12'],
  ])('stand by their ends where three and more follow one another: %j', (numbers, said) => {
    expect(numberRanges(numbers)).toBe(said);
  });
});

test('choices read as one sentence', () => {
  expect(eitherOf(['Re-marking'], 'or')).toBe('Re-marking');
  expect(eitherOf(['Palabra escrita', 'Certificado', 'Informe'], 'o')).toBe(
    'Palabra escrita o certificado o informe',
  );
});
