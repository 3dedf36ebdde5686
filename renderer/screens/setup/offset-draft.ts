/** The offset of a printer while its pattern is being read: what stands in the fields, and the reading that they make. */
import type { InputOf } from '../../../src/station/contract.ts';
import { numberIn } from './printer-draft.ts';

export type Reading = InputOf<'printer.calibrate'>['reading'];
export type ReadingBy = Reading['by'];

export const rulerFields = ['leftMm', 'rightMm', 'topMm', 'bottomMm'] as const;
export const crossFields = ['fromLeftMm', 'fromTopMm'] as const;
export type ReadingField = (typeof rulerFields)[number] | (typeof crossFields)[number];
export type OffsetDraft = Readonly<Record<ReadingField, string>>;

export const emptyOffsetDraft: OffsetDraft = {
  leftMm: '',
  rightMm: '',
  topMm: '',
  bottomMm: '',
  fromLeftMm: '',
  fromTopMm: '',
};

export const fieldsOf = (by: ReadingBy): readonly ReadingField[] =>
  by === 'rulers' ? rulerFields : crossFields;

/** What a print that sits exactly where it should would read, on stock of this size. */
export const perfectReading = (
  field: ReadingField,
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
): number => {
  switch (field) {
    case 'leftMm':
    case 'topMm':
      return 0;
    case 'rightMm':
      return widthMm;
    case 'bottomMm':
      return heightMm;
    case 'fromLeftMm':
      return widthMm / 2;
    case 'fromTopMm':
      return heightMm / 2;
  }
};

/** A number of millimetres from 0 to the longest stock, 420 mm (A3, ISO 216). */
export const isReading = (text: string): boolean => numberIn(text) <= 420;

/** `undefined` while a field that belongs to it has no number. */
export const readingOf = (by: ReadingBy, draft: OffsetDraft): Reading | undefined => {
  if (!fieldsOf(by).every((field) => isReading(draft[field]))) return undefined;
  const at = (field: ReadingField): number => numberIn(draft[field]);
  return by === 'rulers'
    ? { by, leftMm: at('leftMm'), rightMm: at('rightMm'), topMm: at('topMm'), bottomMm: at('bottomMm') }
    : { by, fromLeftMm: at('fromLeftMm'), fromTopMm: at('fromTopMm') };
};

/** The letter under which each number stands in the drawing of the pattern. */
export const readingMarks = {
  leftMm: 'A',
  rightMm: 'B',
  topMm: 'C',
  bottomMm: 'D',
  fromLeftMm: 'A',
  fromTopMm: 'B',
} as const satisfies Record<ReadingField, string>;
