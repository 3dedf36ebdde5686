/** The marking of a device while it is being entered: what each element says and how it reads. */
import { type LengthUnit, lengthText } from '../../../src/domain/length.ts';
import {
  type MarkingElement,
  type MarkingEntry,
  type MarkingState,
  markingElements,
} from '../../../src/domain/marking.ts';
import type { Language } from '../../../src/domain/message.ts';
import type { LifelineMaterial, ModelSheet } from '../../../src/domain/model-sheet.ts';

export interface MarkingLine {
  readonly element: MarkingElement;
  readonly text: string;
  /** Absent until it is answered. */
  readonly state?: MarkingState;
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
