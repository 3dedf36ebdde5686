/** The marking of a device while it is being entered. */
import { describe, expect, it } from 'vitest';
import {
  expectedMarking,
  firstOpen,
  isComplete,
  legibleText,
  type MarkingLine,
  markingEntries,
  wordsMissing,
} from '../../renderer/screens/device/marking-draft.ts';
import { metres, millimetres } from '../../src/domain/brand.ts';
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
