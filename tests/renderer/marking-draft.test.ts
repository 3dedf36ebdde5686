/** The marking of a device while it is being entered. */
import { describe, expect, it } from 'vitest';
import {
  expectedMarking,
  filledByCodes,
  firstOpen,
  isComplete,
  legibleText,
  type MarkingLine,
  markingEntries,
  otherwiseByCode,
  wordsMissing,
} from '../../renderer/screens/device/marking-draft.ts';
import { calendarDate, metres, millimetres } from '../../src/domain/brand.ts';
import { markingElements } from '../../src/domain/marking.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';

/** Invented. 15.24 m is 50 ft exactly (NIST SP 811: 1 ft = 0.3048 m). */
const sheet: ModelSheet = {
  modelSheetId: 'M001',
  manufacturer: 'Calder',
  model: 'Reel 50',
  ratedLengthM: metres(15.24),
  lifelineMaterial: 'galvanised',
  lifelineDiameterMm: millimetres(4.8),
  capacityKg: { from: 59, to: 140 },
  standard: 'EN 360:2002',
  loadIndicatorFitted: false,
};

const lines = (lengthUnit: 'm' | 'ft', language: 'en' | 'es'): readonly MarkingLine[] =>
  expectedMarking(sheet, { lengthUnit, language, material: (material) => material });

const textOf = (all: readonly MarkingLine[], element: string): string | undefined =>
  all.find((line) => line.element === element)?.text;

const answered = (all: readonly MarkingLine[]): readonly MarkingLine[] =>
  all.map((line) => ({ ...line, state: 'legible' as const }));

describe('the marking of a new device', () => {
  it('starts with every element open, in the order of the marking', () => {
    const fresh = lines('m', 'en');
    expect(fresh.map((line) => line.element)).toEqual([...markingElements]);
    expect(firstOpen(fresh)).toBe('manufacturer');
    expect(isComplete(fresh)).toBe(false);
  });

  it('expects what the model sheet says, in the unit of the station and the decimal mark of the language', () => {
    expect(textOf(lines('ft', 'en'), 'ratedLength')).toBe('50 ft');
    expect(textOf(lines('m', 'es'), 'ratedLength')).toBe('15,24 m');
    expect(textOf(lines('m', 'es'), 'lifelineMaterialAndSize')).toBe('galvanised, 4,8 mm');
    expect(textOf(lines('m', 'en'), 'capacityRange')).toBe('59–140 kg');
  });

  it('expects no serial number and no date of manufacture: they are typed off the device', () => {
    expect(textOf(lines('m', 'en'), 'serialNumber')).toBe('');
    expect(textOf(lines('m', 'en'), 'dateOfManufacture')).toBe('');
  });

  it('is not complete while a legible serial number or date has no words', () => {
    const all = answered(lines('m', 'en'));
    expect(all.filter(wordsMissing).map((line) => line.element)).toEqual([
      'serialNumber',
      'dateOfManufacture',
    ]);
    expect(isComplete(all)).toBe(false);
    const typed = all.map((line) => (wordsMissing(line) ? { ...line, text: '2025-06' } : line));
    expect(isComplete(typed)).toBe(true);
  });

  it('is complete with a serial number that nobody can read, and then gives out no words for it', () => {
    const all = answered(lines('m', 'en')).map((line) =>
      line.element === 'serialNumber'
        ? { ...line, text: 'typed before', state: 'illegible' as const }
        : { ...line, text: line.text === '' ? '2025-06' : line.text },
    );
    expect(isComplete(all)).toBe(true);
    expect(legibleText(all, 'serialNumber')).toBe('');
    expect(markingEntries(all).find((entry) => entry.element === 'serialNumber')).toEqual({
      element: 'serialNumber',
      state: 'illegible',
    });
  });
});

describe('a scanned code of a new device', () => {
  const made = { on: calendarDate('2026-03-31'), dayGiven: false };
  const codes = [{ serial: 'W10', dateOfManufacture: made }, { serial: 'W11' }];
  const lineOf = (all: readonly MarkingLine[], element: string) =>
    all.find((line) => line.element === element)!;

  it('fills what is empty, from the first code that says it, and leaves it to be answered', () => {
    const filled = filledByCodes(answered(lines('m', 'en')), codes);
    expect(lineOf(filled, 'serialNumber')).toEqual({
      element: 'serialNumber',
      text: 'W10',
      fromCode: true,
    });
    expect(lineOf(filled, 'dateOfManufacture').text).toBe('2026-03');
    expect(firstOpen(filled)).toBe('serialNumber');
    expect(lineOf(filled, 'manufacturer')).toEqual(lineOf(answered(lines('m', 'en')), 'manufacturer'));
  });

  it('leaves alone what a person typed, and what nobody can read', () => {
    const typed = lines('m', 'en').map((line): MarkingLine => {
      if (line.element === 'serialNumber') return { ...line, text: 'X1' };
      return line.element === 'dateOfManufacture' ? { ...line, state: 'illegible' } : line;
    });
    expect(filledByCodes(typed, codes)).toEqual(typed);
    expect(otherwiseByCode(lineOf(typed, 'serialNumber'), codes)).toBe('W10');
    expect(otherwiseByCode(lineOf(typed, 'dateOfManufacture'), codes)).toBeUndefined();
  });

  it('says otherwise where a second code has another serial number, but not for the writing of it', () => {
    const serial = (text: string): MarkingLine => ({ element: 'serialNumber', text });
    expect(otherwiseByCode(serial('W10'), codes)).toBe('W11');
    expect(otherwiseByCode(serial('w-10'), codes.slice(0, 1))).toBeUndefined();
    expect(otherwiseByCode(serial('00W10'), codes.slice(0, 1))).toBeUndefined();
    const date = (text: string): MarkingLine => ({ element: 'dateOfManufacture', text });
    expect(otherwiseByCode(date('2026-03-15'), codes)).toBeUndefined();
    expect(otherwiseByCode(date('2026'), codes)).toBeUndefined();
    expect(otherwiseByCode(date('2026-04'), codes)).toBe('2026-03');
  });
});
