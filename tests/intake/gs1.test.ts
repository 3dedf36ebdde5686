/** GS1 data: check digits, dates, separators, and what each element says, against published examples and another encoder. */
import bwipjs from 'bwip-js/node';
import { describe, expect, test } from 'vitest';
import { gs1CheckDigit, gtin14, hasGs1CheckDigit } from '../../src/domain/marking-data.ts';
import { applicationIdentifier } from '../../src/intake/gs1/application-identifiers.ts';
import { faultOfElement } from '../../src/intake/gs1/element.ts';
import { readSixDigitDate } from '../../src/intake/gs1/six-digit-date.ts';
import { dataOf, faultOf, read, year } from './read.ts';

const GS = '\x1d';

/** The GTIN of the examples in the GS1 General Specifications and on gs1.org. */
const gtin = '09506000134352';

describe('a check digit', () => {
  test('of 629104150021 is 3, as in the example of GS1 (“How to calculate a check digit manually”)', () => {
    expect(gs1CheckDigit('629104150021')).toBe(3);
  });

  test.each([
    ['37610425002123456', 9, 'SSCC, the example of the GS1 General Specifications §7.9.1'],
    ['0950600013435', 2, 'GTIN-14 of the GS1 examples'],
    ['400638133393', 1, 'EAN-13, published example of Wikipedia, “International Article Number”'],
    ['03600029145', 2, 'UPC-A, published example of Wikipedia, “Universal Product Code”'],
    ['7351353', 7, 'EAN-8, published example of Wikipedia, “EAN-8”'],
  ])('of %s is %i: %s', (digits, check) => {
    expect(gs1CheckDigit(digits)).toBe(check);
    expect(hasGs1CheckDigit(`${digits}${check}`)).toBe(true);
  });

  test('finds every single wrong digit of a GTIN', () => {
    for (let index = 0; index < 14; index += 1) {
      for (const digit of '0123456789') {
        if (gtin[index] === digit) continue;
        expect(hasGs1CheckDigit(gtin.slice(0, index) + digit + gtin.slice(index + 1))).toBe(false);
      }
    }
  });

  test('tells an article number of 8, 12, 13 or 14 digits from other numbers', () => {
    expect(gtin14('4006381333931')).toBe('04006381333931');
    expect(gtin14('036000291452')).toBe('00036000291452');
    expect(gtin14('4006381333932')).toBeUndefined();
    expect(gtin14('12345')).toBeUndefined();
  });
});

describe('a date of six digits', () => {
  /** GS1 General Specifications §7.12: 51 to 99 years ahead is the century before, 50 to 99 behind is the next. */
  test.each([
    ['260315', 2026, '2026-03-15'],
    ['760101', 2026, '2076-01-01'],
    ['770101', 2026, '1977-01-01'],
    ['991231', 2026, '1999-12-31'],
    ['000131', 2026, '2000-01-31'],
    ['000131', 2051, '2100-01-31'],
    ['000131', 2050, '2100-01-31'],
    ['000131', 2049, '2000-01-31'],
    ['490101', 2098, '2049-01-01'],
    ['480101', 2098, '2148-01-01'],
    ['990101', 2001, '1999-01-01'],
  ])('%s read in %i is %s', (digits, currentYear, on) => {
    expect(readSixDigitDate(digits, currentYear)).toEqual({ on, dayGiven: true });
  });

  test.each([
    ['260200', '2026-02-28'],
    ['240200', '2024-02-29'],
    ['260400', '2026-04-30'],
    ['261200', '2026-12-31'],
  ])('with day 00, %s, is the last day of its month, %s', (digits, on) => {
    expect(readSixDigitDate(digits, year)).toEqual({ on, dayGiven: false });
  });

  test.each(['261301', '260001', '260230', '260431', '25022a', '2602', '', '270229'])(
    '%s is none',
    (digits) => {
      expect(readSixDigitDate(digits, year)).toBeUndefined();
    },
  );

  test('follows the calendar of the platform on every day of two hundred years', () => {
    for (let at = Date.UTC(1950, 0, 1); at < Date.UTC(2150, 0, 1); at += 86_400_000) {
      const on = new Date(at).toISOString().slice(0, 10);
      const read = readSixDigitDate(on.slice(2).replaceAll('-', ''), Number(on.slice(0, 4)));
      if (read?.on !== on) expect(read?.on).toBe(on);
    }
  });
});

describe('a GS1 element string', () => {
  /** GS1 General Specifications §7.8: FNC1 ends what has no predefined length; a scanner sends it as GS. */
  test('is parted by FNC1, and where a length is predefined', () => {
    const { data, code } = dataOf(`]C101${gtin}1126031510LOT-7${GS}21AB/123`);
    expect(data).toEqual({
      source: 'GS1 element string',
      identification: {
        gtin,
        lot: 'LOT-7',
        serial: 'AB/123',
        dateOfManufacture: { on: '2026-03-15', dayGiven: true },
      },
      names: 'one device',
      separatorsMayBeLost: false,
    });
    expect(code).toBe(`(01)${gtin}(10)LOT-7(11)260315(21)AB/123`);
  });

  test('has one form, whatever scanner sent it: identifier, order, separators and parentheses aside', () => {
    const forms = [
      `]C101${gtin}21S-77${GS}10L1`,
      `]d201${gtin}10L1${GS}21S-77`,
      `]Q3${GS}10L1${GS}01${gtin}21S-77${GS}`,
      `]e001${gtin}${GS}21S-77${GS}10L1`,
      `01${gtin}21S-77${GS}10L1`,
      `${GS}01${gtin}21S-77${GS}10L1`,
      `(01)${gtin}(21)S-77(10)L1`,
      ` (21) S-77 (10) L1 (01) ${gtin} `,
      `(01)${gtin}(21)S-77(10)L1(21)S-77`,
    ].map((text) => dataOf(text).code);
    expect(new Set(forms)).toEqual(new Set([`(01)${gtin}(10)L1(21)S-77`]));
  });

  test('keeps two codes apart whose data hold parentheses', () => {
    const one = dataOf(`]C110B(21)A`).code;
    const other = dataOf(`]C110B${GS}21A`).code;
    expect(one).not.toBe(other);
    expect(dataOf(one).code).toBe(one);
    expect(dataOf(other).code).toBe(other);
  });

  test('says the maker’s part number, a GRAI, a GIAI, and dates without a day', () => {
    expect(dataOf(`]C101${gtin}240PN_5`).data.identification).toEqual({
      gtin,
      manufacturerReference: 'PN_5',
    });
    // The check digit of 629104150021 is 3 (GS1); AI 8003 has a zero before the 13 digits.
    expect(dataOf(']C1800306291041500213SER9').data).toMatchObject({
      identification: { manufacturerReference: '6291041500213', serial: 'SER9' },
      names: 'one device',
    });
    expect(dataOf(']C18003062910415002131').data.names).toBe('one device');
    expect(dataOf(']C1800306291041500213').data.names).toBe('its model');
    expect(dataOf(']C180046291041ASSET-7').data).toMatchObject({
      identification: { individualId: '6291041ASSET-7' },
      names: 'one device',
    });
    expect(dataOf(`]d201${gtin}1124020017270100`).data.identification).toMatchObject({
      dateOfManufacture: { on: '2024-02-29', dayGiven: false },
      expiry: { on: '2027-01-31', dayGiven: false },
    });
  });

  test('steps over elements that say nothing of a device, assigned or of predefined length', () => {
    const { data } = dataOf(`]C101${gtin}3102001750${'37999'}${GS}21X1${GS}91ANY`);
    expect(data.identification).toEqual({ gtin, serial: 'X1' });
    // AI 14 is not assigned; what begins with 14 has eight characters in all (GS1 General Specifications, figure 7.8.5-2).
    expect(dataOf(`]C114260315${'21'}S9`).data.identification).toEqual({ serial: 'S9' });
  });

  test('names the model alone where it has no serial number', () => {
    expect(dataOf(`]C101${gtin}`).data.names).toBe('its model');
    expect(dataOf(']E04006381333931')).toMatchObject({
      code: '(01)04006381333931',
      data: { source: 'EAN/UPC', names: 'its model' },
    });
    expect(dataOf(']C191INTERNAL').data.names).toBe('something else');
  });

  test('needs a mark or a checked GTIN: a maker’s serial number that begins like an AI stays one', () => {
    for (const text of [
      '2112345',
      '10250017',
      '0109506000134353',
      '8004XYZ',
      '4006381333931',
      '(555) 0101',
    ]) {
      expect(read(text)).toEqual({ kind: 'other', text });
    }
    expect(dataOf(`01${gtin}21S1`).data.identification).toEqual({ gtin, serial: 'S1' });
  });

  test.each([
    ['a wrong check digit', `]C10109506000134353`, 'gs1-check-digit'],
    ['a wrong check digit in human readable form', '(01)09506000134353(21)A', 'gs1-check-digit'],
    ['a wrong check digit of a GRAI', ']C1800306291041500214SER9', 'gs1-check-digit'],
    ['a wrong check digit of an EAN', ']E04006381333932', 'gs1-check-digit'],
    ['an article number of no known length', ']E040063813339', 'gtin-shape'],
    ['an unknown AI', ']C18999ABC', 'gs1-ai-unknown'],
    ['an unknown AI in human readable form', `(01)${gtin}(8999)A`, 'gs1-ai-unknown'],
    ['letters where an AI must be', ']C1ABC', 'gs1-ai-unknown'],
    ['half a GTIN', ']C1010950600', 'gs1-too-short'],
    ['a separator within a GTIN', `]C101095060${GS}00134352`, 'gs1-too-short'],
    ['an element without data', `]C121${GS}10A`, 'gs1-too-short'],
    ['a serial number of 21 characters', `]C121${'A'.repeat(21)}${GS}10B`, 'gs1-too-long'],
    ['a serial number of 21 characters in human readable form', `(21)${'A'.repeat(21)}`, 'gs1-too-long'],
    ['a lost separator', `]C110LOT-2026-0001234521SERIAL-0042`, 'gs1-separator-lost'],
    ['a lost separator before a GTIN', `]C1211234501${gtin}`, 'gs1-separator-lost'],
    ['a lost separator before a GRAI', `]C1101800306291041500213`, 'gs1-separator-lost'],
    ['a lost separator within 4,000 characters', `]C121${'A'.repeat(3990)}`, 'gs1-separator-lost'],
    ['a date that is none', `]C101${gtin}11261332`, 'gs1-date'],
    ['a character beyond the 82', ']C121A B', 'gs1-character'],
    ['a letter in a number', ']C101095060001343A2', 'gs1-character'],
    ['an accent', ']C121Ñ1', 'gs1-character'],
    ['NUL', ']C121A\0B', 'gs1-character'],
    ['a GRAI without its zero', ']C1800316291041500210', 'gs1-character'],
    ['two serial numbers', `]C121A${GS}21B`, 'scan-contradicts-itself'],
    ['nothing but separators', `]C1${GS}${GS}`, 'gs1-empty'],
    ['nothing', ']C1', 'scan-empty'],
  ])('is refused for %s', (_what, text, code) => {
    expect(faultOf(text)).toBe(code);
  });

  test('says that separators may be lost where an element ends like another one, and does not guess', () => {
    for (const text of [`]C101${gtin}21SN7711260315`, `]C101${gtin}10LOT21SER`]) {
      expect(dataOf(text).data.separatorsMayBeLost).toBe(true);
    }
    for (const text of [
      `]C101${gtin}21SN77${GS}11260315`,
      `]C101${gtin}21SN7711`,
      `]C101${gtin}21A21B`,
      `(01)${gtin}(21)SN7711260315`,
    ]) {
      expect(dataOf(text).data.separatorsMayBeLost).toBe(false);
    }
  });
});

/** bwip-js holds the GS1 Barcode Syntax Dictionary of its own and says by name what is wrong with an element string. */
describe('the table of AIs', () => {
  const refusalOf = (text: string): string => {
    try {
      bwipjs.raw({ bcid: 'gs1-128', text });
      return '';
    } catch (error) {
      return String(error);
    }
  };

  test('knows the AIs that bwip-js knows, and no other', () => {
    const differing: string[] = [];
    for (const width of [2, 3, 4]) {
      for (let number = 0; number < 10 ** width; number += 1) {
        const ai = String(number).padStart(width, '0');
        const isKnown = applicationIdentifier(ai) !== undefined;
        if (isKnown === /unknownAI/.test(refusalOf(`(${ai})1`))) differing.push(ai);
      }
    }
    expect(differing).toEqual([]);
  }, 60_000);

  test('has the lengths of bwip-js', () => {
    const differing: string[] = [];
    let compared = 0;
    for (const ai of known) {
      const { least, most } = applicationIdentifier(ai)!;
      for (const length of new Set([1, least - 1, least, most, most + 1].filter((each) => each > 0))) {
        const refused = refusalOf(`(${ai})${'0'.repeat(length)}`);
        const fits = !/value(TooShort|TooLong)/.test(refused);
        // AIs 423 and 425 are lists of numbers of three digits, which is looser here.
        if (fits !== (length >= least && length <= most)) differing.push(`${ai}: ${length}, ${refused}`);
        compared += 1;
      }
    }
    expect(differing).toEqual([]);
    expect(compared).toBeGreaterThan(500);
  }, 60_000);

  test('has the characters of bwip-js', () => {
    const differing: string[] = [];
    for (const ai of ['10', '21', '240', '8004', '8010', '8030', '30', '8012']) {
      for (let code = 33; code < 127; code += 1) {
        const character = String.fromCharCode(code);
        // In `raw` these three are bwip-js's own marks.
        if ('(^\\'.includes(character)) continue;
        const value = `12${character}`;
        const ours = faultOfElement({ ai, value }, year, false)?.code === 'gs1-character';
        if (ours !== /notNumeric|bad|cset/i.test(refusalOf(`(${ai})${value}`)))
          differing.push(`${ai} ${character}: ${refusalOf(`(${ai})${value}`)}`);
      }
    }
    expect(differing).toEqual([]);
  });
});

const known = [2, 3, 4].flatMap((width) =>
  Array.from({ length: 10 ** width }, (_, number) => String(number).padStart(width, '0')).filter(
    (ai) => applicationIdentifier(ai) !== undefined,
  ),
);
