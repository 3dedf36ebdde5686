/** What a person reads off the test pattern, while it is being entered. */
import { describe, expect, it } from 'vitest';
import {
  crossFields,
  emptyOffsetDraft,
  perfectReading,
  readingOf,
  rulerFields,
} from '../../renderer/screens/setup/offset-draft.ts';
import { offsetFromCross, offsetFromRulers } from '../../src/printing/calibration/offset.ts';

const stock = { widthMm: 100, heightMm: 50 };
const none = { xMm: 0, yMm: 0 };

const draftOf = (values: Readonly<Record<string, string>>) => ({ ...emptyOffsetDraft, ...values });

describe('a reading of the test pattern', () => {
  it('is none while a number of it is missing', () => {
    expect(readingOf('rulers', draftOf({ leftMm: '0', rightMm: '100', topMm: '0' }))).toBeUndefined();
    expect(readingOf('cross', draftOf({ fromLeftMm: '50' }))).toBeUndefined();
  });

  it('takes only the numbers that belong to the way of reading', () => {
    const draft = draftOf({ fromLeftMm: '50,5', fromTopMm: '24.8', leftMm: 'x' });
    expect(readingOf('cross', draft)).toEqual({ by: 'cross', fromLeftMm: 50.5, fromTopMm: 24.8 });
  });

  it('is none where a number is longer than any stock: 420 mm, the long side of A3 (ISO 216)', () => {
    expect(readingOf('cross', draftOf({ fromLeftMm: '421', fromTopMm: '25' }))).toBeUndefined();
    expect(readingOf('cross', draftOf({ fromLeftMm: '420', fromTopMm: '25' }))).toBeDefined();
  });

  it('moves nothing where it reads what is given as the perfect print', () => {
    const perfect = draftOf(
      Object.fromEntries(
        [...rulerFields, ...crossFields].map((field) => [field, String(perfectReading(field, stock))]),
      ),
    );
    const rulers = readingOf('rulers', perfect);
    const cross = readingOf('cross', perfect);
    expect(rulers?.by === 'rulers' && offsetFromRulers(rulers, stock, none)).toEqual(none);
    expect(cross?.by === 'cross' && offsetFromCross(cross, stock, none)).toEqual(none);
  });
});
