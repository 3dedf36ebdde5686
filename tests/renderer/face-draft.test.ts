import { describe, expect, it } from 'vitest';
import { faceDraftOf, faceOf, flatFace, isSoundFace } from '../../renderer/screens/setup/face-draft.ts';

describe('the stock of a printer besides its size', () => {
  it('is flat where nothing else is said', () => {
    expect(faceOf(flatFace)).toEqual({ form: { shape: 'flat' } });
  });

  it('stands in the fields as it was saved, and is saved as it stands', () => {
    const faces = [
      { form: { shape: 'wrap', tailAt: 'below', tailMm: 62.5 } },
      {
        form: { shape: 'flag', fold: 'level', sides: 'one', clearMm: 8 },
        hole: { xMm: 50, yMm: 7, diameterMm: 5 },
      },
      { form: { shape: 'flat' }, preprintedHeaderMm: 40 },
    ] as const;
    for (const face of faces) expect(faceOf(faceDraftOf(face))).toEqual(face);
  });

  it('takes a comma as a decimal point, and is not sound without a number', () => {
    expect(faceOf({ ...flatFace, shape: 'wrap', tailMm: '62,5' })).toMatchObject({ form: { tailMm: 62.5 } });
    for (const tailMm of ['', 'wide', '-1', '421'])
      expect(isSoundFace({ ...flatFace, shape: 'wrap', tailMm })).toBe(false);
    expect(isSoundFace({ ...flatFace, hasHole: true, holeDiameterMm: '25' })).toBe(false);
    expect(isSoundFace({ ...flatFace, hasHeader: true, headerMm: '5' })).toBe(false);
    expect(isSoundFace({ ...flatFace, tailMm: 'not seen' })).toBe(true);
  });
});
