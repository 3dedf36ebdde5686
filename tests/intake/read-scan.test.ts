/** What a text is by its form: our own codes, a maker's data, anything else, and what no symbol can hold. */
import { describe, expect, test } from 'vitest';
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { languages } from '../../src/domain/message.ts';
import { readScan } from '../../src/intake/read-scan.ts';
import { sentenceOf } from '../../src/station/sentence.ts';

const read = (text: string) => readScan(text, 2026);
const benchId = benchIdFrom([1, 2, 3, 4, 5, 6]);
const tagText = `SRL H4RP ${benchId} TAG3 PASS 20261124 DUE 20271124 9T4QK2MX`;

describe('the symbology identifier of a scanner', () => {
  /** ISO/IEC 15424, from memory: Code 39, Code 128, Data Matrix, QR Code, Aztec Code, PDF417, Interleaved 2 of 5, other. */
  const identifiers = ['', ']A0', ']C0', ']d1', ']Q1', ']z0', ']L0', ']I0', ']X0'];

  test('is taken off our own codes and off a maker’s serial number', () => {
    for (const identifier of identifiers) {
      expect(read(`${identifier}${benchId}`)).toEqual({ kind: 'bench ID', benchId });
      expect(read(`${identifier}XCGOOD`)).toEqual({ kind: 'command', command: 'good' });
      expect(read(`${identifier}${tagText}`)).toMatchObject({ kind: 'tag', benchId });
      expect(read(`${identifier}Q26C49001`)).toEqual({ kind: 'other', text: 'Q26C49001' });
      expect(read(`${identifier}CAGE2`)).toEqual({ kind: 'other', text: 'CAGE2' });
    }
  });

  test('is told from a code that only begins with a bracket', () => {
    for (const text of [']', ']C', ']12', ']]', ']w0ABC', 'A]C1B'])
      expect(read(text)).toEqual({ kind: 'other', text });
  });
});

describe('a text that no symbol holds', () => {
  const malformed: readonly (readonly [string, string])[] = [
    ['', 'scan-empty'],
    [' \t\r\n ', 'scan-empty'],
    [']C0', 'scan-empty'],
    ['\0', 'scan-unseen-character'],
    ['Q26\0C49001', 'scan-unseen-character'],
    ['Q26C49001\x1d', 'scan-unseen-character'],
    ['Q26\x07C49001', 'scan-unseen-character'],
    ['Q26\x7fC49001', 'scan-unseen-character'],
    ['Q26\u200bC49001', 'scan-unseen-character'],
    ['Q26\u202eC49001', 'scan-unseen-character'],
    ['Q26\ufffdC49001', 'scan-unseen-character'],
    ['Q26\ud800C49001', 'scan-unseen-character'],
    ['Q26C\n49001', 'scan-unseen-character'],
    ['A'.repeat(4001), 'scan-too-long'],
  ];

  test.each(malformed)('%j is refused with %s', (text, code) => {
    expect(read(text)).toMatchObject({ kind: 'malformed', fault: { code } });
  });

  test('is refused with a sentence in each language that shows nothing unseen and says what to do', () => {
    const others = [
      ']C101095060001343',
      ']C18999A',
      '[)>06S1',
      `]C121${'A'.repeat(3000)}`,
      ']C121\0A',
      ']E0\x07',
    ];
    for (const text of [...malformed.map(([each]) => each), ...others]) {
      const scan = read(text);
      for (const language of languages) {
        const sentence = scan.kind === 'malformed' ? sentenceOf(scan.fault, language) : '';
        expect(sentence).toMatch(/^[“«A-Z].+\.$/u);
        expect(sentence).not.toMatch(/[\p{C}]|\{\{/u);
        expect(sentence.length).toBeLessThan(300);
      }
    }
  });

  test('names the character and shows where it is', () => {
    const scan = read('Q26\0C49001');
    expect(scan.kind === 'malformed' && sentenceOf(scan.fault, 'en')).toContain(
      '“Q26<NUL>C49001” holds a character that cannot be seen: NUL (0x00)',
    );
  });
});

describe('any other text', () => {
  test('is taken as it stands, up to 4,000 characters', () => {
    for (const text of ['Ñ-7 ü', '4006381333931', 'E200-3412-0117', 'A'.repeat(4000), '日本語', '🙂'])
      expect(read(`  ${text} `)).toEqual({ kind: 'other', text });
  });
});
