import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { QuarantineTag, StatusTag } from '../../src/domain/tag-content.ts';
import { looksLikeTagText, readTagText, sealedWords, writeTagText } from '../../src/domain/tag-text.ts';

const seal = { mark: 'H4RP', code: '9T4QK2MX' };
const status = {
  kind: 'status',
  benchId: 'K7M3X43SXJ',
  tagNumber: 12,
  inspectedOn: '2026-11-24',
  dueOn: '2027-11-24',
  seal,
} as StatusTag;
const quarantine = {
  kind: 'quarantine',
  benchId: 'K7M3X43SXJ',
  tagNumber: 13,
  removedOn: '2027-01-05',
  seal,
} as QuarantineTag;

describe('the QR text of a tag', () => {
  test('is words that a person can read on any phone', () => {
    expect(writeTagText(status)).toBe('SRL H4RP K7M3X43SXJ TAG12 PASS 20261124 DUE 20271124 9T4QK2MX');
    expect(writeTagText(quarantine)).toBe('SRL H4RP K7M3X43SXJ TAG13 REMOVED 20270105 9T4QK2MX');
  });

  test('is read back as it was written', () => {
    expect(readTagText(writeTagText(status))).toEqual(status);
    expect(readTagText(writeTagText(quarantine))).toEqual(quarantine);
  });

  test('has its code over all words before it', () => {
    expect(writeTagText(status)).toBe(`${sealedWords(status, seal.mark)} ${seal.code}`);
  });

  /** The 45 characters of the alphanumeric mode: ISO/IEC 18004, table of the alphanumeric character set. */
  test('stays in the alphanumeric mode of QR Code', () => {
    for (const tag of [status, quarantine]) expect(writeTagText(tag)).toMatch(/^[0-9A-Z $%*+\-./:]+$/);
  });

  /** Capacity of version 3 at level M in alphanumeric mode: 61 characters (ISO/IEC 18004, table of capacities, from memory). */
  test('fits QR version 3 at level M up to tag 99', () => {
    expect(writeTagText({ ...status, tagNumber: 99 }).length).toBeLessThanOrEqual(61);
  });

  test('is nothing else', () => {
    const others = ['', 'K7M3X43SXJ', 'SRL', `${writeTagText(status)} X`, writeTagText(status).toLowerCase()];
    for (const text of [...others, writeTagText(status).replace('PASS', 'FAIL')]) {
      expect(readTagText(text)).toBeUndefined();
    }
  });

  test('still looks like a tag after any one character is altered, lost or added, so that it is never an unknown code', () => {
    const text = fc.constantFrom(writeTagText(status), writeTagText(quarantine));
    const place = fc.nat({ max: 200 });
    fc.assert(
      fc.property(
        text,
        place,
        fc.string({ minLength: 0, maxLength: 1 }),
        fc.boolean(),
        (whole, at, character, isAdded) => {
          const index = at % whole.length;
          const changed = whole.slice(0, index) + character + whole.slice(isAdded ? index : index + 1);
          expect(looksLikeTagText(changed)).toBe(true);
        },
      ),
    );
  });

  test('does not look like any other code', () => {
    for (const text of [
      'K7M3X43SXJ',
      '4006381333931',
      'HP10024',
      'XCGOOD',
      'https://example.org/a/long/address?with=query',
    ]) {
      expect(looksLikeTagText(text)).toBe(false);
    }
  });
});
