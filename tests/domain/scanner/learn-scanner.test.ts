/** A scanner is learnt from three scans of a known symbol. */
import { describe, expect, test } from 'vitest';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { learningText, learnScanner, type ScanSample } from '../../../src/domain/scanner/learn-scanner.ts';
import { withoutAffixes } from '../../../src/domain/scanner/scanner.ts';
import { type KeyboardSetting, typedKeys } from '../../support/keyboards.ts';

const us: KeyboardSetting = { scanner: 'us', computer: 'us' };

const sample = (
  text: string,
  {
    setting = us,
    gapMs = 8,
    end = 'Enter',
  }: { setting?: KeyboardSetting; gapMs?: number; end?: ScanSample['end'] } = {},
): ScanSample => ({
  end,
  keys: typedKeys(text, setting).map(({ key, ...stroke }, index) => ({
    ...stroke,
    text: key === 'Dead' ? '' : key,
    at: 1000 + index * gapMs,
  })),
});

const thrice = (one: ScanSample): ScanSample[] => [one, one, one];
const codeOf = (samples: readonly ScanSample[]): string | undefined => {
  const learnt = learnScanner(samples);
  return isRefusal(learnt) ? learnt.code : undefined;
};

describe('three scans of the symbol', () => {
  test('tell the pace, the end, and that nothing stands before or after', () => {
    expect(learnScanner(thrice(sample(learningText)))).toEqual({
      scanner: { gapMs: 8, end: 'Enter', prefix: '', suffix: '', usesUsPlaces: false },
    });
  });

  test('tell what the scanner sends before and after each code, which is taken off from then on', () => {
    const learnt = learnScanner(thrice(sample(`~b${learningText}$`, { end: 'Tab' })));
    if (isRefusal(learnt)) throw new Error(learnt.code);
    expect(learnt.scanner).toMatchObject({ prefix: '~b', suffix: '$', end: 'Tab' });
    expect(withoutAffixes('~bHP10031$', learnt.scanner)).toBe('HP10031');
    expect(withoutAffixes('HP10031', learnt.scanner)).toBe('HP10031');
  });

  test('tell that it types for the US layout on a Spanish computer', () => {
    const learnt = learnScanner(thrice(sample(learningText, { setting: { scanner: 'us', computer: 'es' } })));
    expect(learnt).toMatchObject({ scanner: { usesUsPlaces: true }, fault: 'layout' });
  });

  test('tell that Caps Lock was on, which is no trait of the scanner', () => {
    const learnt = learnScanner(thrice(sample(learningText, { setting: { ...us, capsLock: true } })));
    expect(learnt).toMatchObject({ scanner: { usesUsPlaces: false }, fault: 'caps lock' });
  });

  test('tell a scanner that ends with a pause', () => {
    expect(learnScanner(thrice(sample(learningText, { end: 'none' })))).toMatchObject({
      scanner: { end: 'none' },
    });
  });
});

describe('nothing is learnt', () => {
  test('from fewer than three scans', () => {
    expect(codeOf([sample(learningText), sample(learningText)])).toBe('scanner-more-scans');
  });

  test('from another symbol, or from one typed for a layout that is not known here', () => {
    expect(codeOf(thrice(sample('HP10031')))).toBe('scanner-text-not-found');
    expect(codeOf(thrice(sample(learningText.replaceAll('-', '_'))))).toBe('scanner-text-not-found');
  });

  test('from scans that differ', () => {
    expect(codeOf([sample(learningText), sample(learningText), sample(`x${learningText}`)])).toBe(
      'scanner-scans-differ',
    );
  });

  test('from one that is as slow as a person', () => {
    expect(codeOf(thrice(sample(learningText, { gapMs: 76 })))).toBe('scanner-too-slow');
    expect(codeOf(thrice(sample(learningText, { gapMs: 75 })))).toBeUndefined();
  });
});
