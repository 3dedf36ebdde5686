/** Messages of ISO/IEC 15434, formats 05 and 06, whole and damaged. */
import { describe, expect, test } from 'vitest';
import { sentenceOf } from '../../src/station/sentence.ts';
import { dataOf, faultOf, read } from './read.ts';

const [GS, RS, EOT] = ['\x1d', '\x1e', '\x04'];
const message = (format: string, ...fields: readonly string[]) =>
  `[)>${RS}${format}${fields.map((field) => GS + field).join('')}${RS}${EOT}`;

/** The GTIN of the examples of GS1. */
const gtin = '09506000134352';

describe('a message of ISO/IEC 15434 that contradicts itself between its formats', () => {
  test('is refused with the word for what differs, in each language', () => {
    const scan = read(`[)>${RS}05${GS}21A${RS}06${GS}SB${RS}${EOT}`);
    const sentences = (['en', 'es'] as const).map((language) =>
      scan.kind === 'malformed' ? sentenceOf(scan.fault, language) : '',
    );
    expect(sentences[0]).toContain('for the serial number: “A” and “B”');
    expect(sentences[1]).toContain('para el número de serie: «A» y «B»');
  });
});

describe('a message of ISO/IEC 15434', () => {
  /** The meanings of the data identifiers are from memory of ANSI MH10.8.2. */
  test('of format 06 says serial number, part number, lot, maker and dates by data identifier', () => {
    const { data, code } = dataOf(
      message('06', '17V0CVA5', '1P1234-A', 'SW10/7', '1TL7', '16D20260228', '14D20310131'),
    );
    expect(data).toEqual({
      source: 'ISO/IEC 15434 format 06',
      identification: {
        manufacturerId: '0CVA5',
        manufacturerReference: '1234-A',
        serial: 'W10/7',
        lot: 'L7',
        dateOfManufacture: { on: '2026-02-28', dayGiven: true },
        expiry: { on: '2031-01-31', dayGiven: true },
      },
      names: 'one device',
      separatorsMayBeLost: false,
    });
    expect(code).toBe('[14D]20310131[16D]20260228[17V]0CVA5[1P]1234-A[1T]L7[S]W10/7');
  });

  test('takes an identifier that is unique in the world, and steps over fields that say nothing of a device', () => {
    expect(dataOf(message('06', '25SUN123456789A47', 'Q20', '4LUS')).data).toMatchObject({
      identification: { individualId: 'UN123456789A47' },
      names: 'one device',
    });
    expect(dataOf(message('06', '1P1234-A')).data.names).toBe('its model');
  });

  test('of format 05 means the same as the GS1 symbol with the same elements', () => {
    const { data, code } = dataOf(message('05', `01${gtin}`, '21S-77', '11260315'));
    expect(data).toMatchObject({
      source: 'ISO/IEC 15434 format 05',
      identification: { gtin, serial: 'S-77', dateOfManufacture: { on: '2026-03-15' } },
    });
    expect(dataOf(`]C101${gtin}1126031521S-77`).code).toBe(code);
  });

  test('has one form, whatever the order of its fields and the symbology, and also without its last mark', () => {
    const forms = [
      message('06', 'S77', '1PA-1'),
      message('06', '1PA-1', 'S77', 'S77'),
      `]d1${message('06', 'S77', '1PA-1')}`,
      `[)>${RS}06${GS}S77${GS}1PA-1${RS}`,
      `[)>${RS}06${GS}S77${RS}06${GS}1PA-1${RS}${EOT}`,
    ].map((text) => dataOf(text).code);
    expect(new Set(forms)).toEqual(new Set(['[1P]A-1[S]77']));
  });

  test('keeps two codes apart whose data hold brackets', () => {
    const codes = [message('06', 'S7', '1PA'), message('06', '1PA[S]7'), message('06', '1PA\\[S]7')].map(
      (text) => dataOf(text).code,
    );
    expect(new Set(codes).size).toBe(3);
  });

  test.each([
    ['its separators dropped', '[)>06S771PA-1', 'transfer-separators-lost'],
    ['its header alone', '[)>', 'transfer-separators-lost'],
    ['its group separators dropped', `[)>${RS}06S77${RS}${EOT}`, 'transfer-separators-lost'],
    ['no end', `[)>${RS}06${GS}S77`, 'transfer-cut-off'],
    ['the header and nothing behind it', `[)>${RS}`, 'transfer-cut-off'],
    ['a format of text for electronic interchange', message('12', 'PAR A'), 'transfer-format-not-read'],
    ['no fields', message('06', ''), 'transfer-empty'],
    ['a field without a data identifier', message('06', '12345'), 'di-unknown'],
    ['a field without data', message('06', 'S', '1PA'), 'di-empty'],
    ['a date that is none', message('06', '16D20260230'), 'di-date'],
    ['a date of six digits where eight are due', message('06', '16D260228'), 'di-date'],
    ['two serial numbers', message('06', 'S77', 'S78'), 'scan-contradicts-itself'],
    [
      'two serial numbers in two formats',
      `[)>${RS}05${GS}21A${RS}06${GS}SB${RS}${EOT}`,
      'scan-contradicts-itself',
    ],
    ['a control character in a field', message('06', 'S7\x077'), 'scan-unseen-character'],
    ['a wrong check digit in format 05', message('05', '0109506000134353'), 'gs1-check-digit'],
    ['an unknown AI in format 05', message('05', '8999X'), 'gs1-ai-unknown'],
  ])('is refused with %s', (_what, text, code) => {
    expect(faultOf(text)).toBe(code);
  });
});
