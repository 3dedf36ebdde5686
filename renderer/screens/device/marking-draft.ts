/** The marking of a device while it is being entered: what each element says and how it reads. */
import { type LengthUnit, lengthText } from '../../../src/domain/length.ts';
import {
  type MarkingElement,
  type MarkingEntry,
  type MarkingState,
  markingElements,
} from '../../../src/domain/marking.ts';
import { type Identification, isSameSerial, markedDateText } from '../../../src/domain/marking-data.ts';
import type { Language } from '../../../src/domain/message.ts';
import type { LifelineMaterial, ModelSheet } from '../../../src/domain/model-sheet.ts';

export interface MarkingLine {
  readonly element: MarkingElement;
  readonly text: string;
  /** Absent until it is answered. */
  readonly state?: MarkingState;
  /** A scanned code gave the words, and nobody has changed them since. */
  readonly fromCode?: boolean;
}

/** Words for the values of a sheet, in the language of the window. */
export interface MarkingWords {
  readonly language: Language;
  readonly lengthUnit: LengthUnit;
  material(material: LifelineMaterial): string;
}

/** Nine open lines, with what the model sheet says ought to stand on the device. */
export const expectedMarking = (sheet: ModelSheet, words: MarkingWords): readonly MarkingLine[] => {
  const decimal = (value: number): string => {
    const text = String(value);
    return words.language === 'es' ? text.replace('.', ',') : text;
  };
  const expected: Partial<Record<MarkingElement, string>> = {
    manufacturer: sheet.manufacturer,
    model: sheet.model,
    lifelineMaterialAndSize: `${words.material(sheet.lifelineMaterial)}, ${decimal(sheet.lifelineDiameterMm)} mm`,
    ratedLength: lengthText(sheet.ratedLengthM, words.lengthUnit, words.language),
    capacityRange: `${decimal(sheet.capacityKg.from)}–${decimal(sheet.capacityKg.to)} kg`,
    standard: sheet.standard,
  };
  return markingElements.map((element) => ({ element, text: expected[element] ?? '' }));
};

/** What the codes that were scanned say of an element, each wording once. */
export const saidByCodes = (
  element: MarkingElement,
  identifications: readonly Identification[],
): readonly string[] => {
  const said = identifications.flatMap(({ serial, dateOfManufacture }) => {
    if (element === 'serialNumber') return serial === undefined ? [] : [serial];
    if (element !== 'dateOfManufacture' || dateOfManufacture === undefined) return [];
    return [markedDateText(dateOfManufacture)];
  });
  return [...new Set(said)];
};

/**
 * Puts what the first code says where nothing stands yet. The element is to be answered then, also where it was before: the
 * person compares the words with the device.
 */
export const filledByCodes = (
  lines: readonly MarkingLine[],
  identifications: readonly Identification[],
): readonly MarkingLine[] =>
  lines.map((line) => {
    const [text] = saidByCodes(line.element, identifications);
    const isLost = line.state === 'illegible' || line.state === 'missing';
    return text === undefined || line.text.trim() !== '' || isLost
      ? line
      : { element: line.element, text, fromCode: true };
  });

/** What a scanned code says of an element where something else stands; `undefined` where all agree. */
export const otherwiseByCode = (
  { element, text, state }: MarkingLine,
  identifications: readonly Identification[],
): string | undefined => {
  if (text.trim() === '' || state === 'illegible' || state === 'missing') return undefined;
  return saidByCodes(element, identifications).find((said) =>
    element === 'serialNumber' ? !isSameSerial(said, text) : !isSameDate(said, text.trim()),
  );
};

/** A date without its day agrees with the same month. */
const isSameDate = (one: string, other: string): boolean => one.startsWith(other) || other.startsWith(one);

/** The first line without an answer; `undefined` when all are answered. */
export const firstOpen = (lines: readonly MarkingLine[]): MarkingElement | undefined =>
  lines.find((line) => line.state === undefined)?.element;

/** Elements whose words nobody can know beforehand: legible means that they were typed off the device. */
const typedElements: readonly MarkingElement[] = ['serialNumber', 'dateOfManufacture'];

/** A line that is legible but for which the words are still to be typed. */
export const wordsMissing = (line: MarkingLine): boolean =>
  line.state === 'legible' && typedElements.includes(line.element) && line.text.trim() === '';

export const isComplete = (lines: readonly MarkingLine[]): boolean =>
  lines.every((line) => line.state !== undefined && !wordsMissing(line));

/** The words of an element that is legible; empty where it is not. */
export const legibleText = (lines: readonly MarkingLine[], element: MarkingElement): string => {
  const line = lines.find((candidate) => candidate.element === element);
  return line?.state === 'legible' ? line.text.trim() : '';
};

export const markingEntries = (lines: readonly MarkingLine[]): MarkingEntry[] =>
  lines.flatMap(({ element, state, text }) => {
    if (state === undefined) return [];
    const words = text.trim();
    return [{ element, state, ...(state === 'legible' && words !== '' ? { text: words } : {}) }];
  });
