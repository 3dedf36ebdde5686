import { describe, expect, test } from 'vitest';
import type { QuarantineTag, StatusTag } from '../../src/domain/tag-content.ts';
import { readTagText, writeTagText } from '../../src/domain/tag-text.ts';

const status = {
  kind: 'status',
  benchId: 'K7M3X43SXJ',
  tagNumber: 12,
  inspectedOn: '2026-11-24',
  dueOn: '2027-11-24',
} as StatusTag;
const quarantine = {
  kind: 'quarantine',
  benchId: 'K7M3X43SXJ',
  tagNumber: 13,
  removedOn: '2027-01-05',
} as QuarantineTag;

describe('the QR text of a tag', () => {
  test('is read back as it was written', () => {
    expect(readTagText(writeTagText(status))).toEqual({
      kind: 'status',
      benchId: 'K7M3X43SXJ',
      tagNumber: 12,
      inspectedOn: '2026-11-24',
      dueOn: '2027-11-24',
    });
    expect(readTagText(writeTagText(quarantine))).toEqual({
      kind: 'quarantine',
      benchId: 'K7M3X43SXJ',
      tagNumber: 13,
      removedOn: '2027-01-05',
    });
  });

  /** The 45 characters of the alphanumeric mode: ISO/IEC 18004, table of the alphanumeric character set. */
  test('stays in the alphanumeric mode of QR Code', () => {
    for (const tag of [status, quarantine]) expect(writeTagText(tag)).toMatch(/^[0-9A-Z $%*+\-./:]+$/);
  });

  test('is nothing else', () => {
    for (const text of [
      '',
      'K7M3X43SXJ',
      'SRLBENCH',
      `${writeTagText(status)} X`,
      writeTagText(status).replace('PASS', 'FAIL'),
      writeTagText(status).toLowerCase(),
    ]) {
      expect(readTagText(text)).toBeUndefined();
    }
  });
});
