/** One scan of the known symbol, as scanners and keyboards of either layout really type it. */
import { describe, expect, test } from 'vitest';
import { learningText, type ScanSample } from '../../../src/domain/scanner/learn-scanner.ts';
import { tryScan } from '../../../src/domain/scanner/try-scan.ts';
import { type LayoutName, typedKeys } from '../../support/keyboards.ts';

const scanned = (text: string, computer: LayoutName, gapMs: number, capsLock = false): ScanSample => ({
  end: 'Enter',
  keys: typedKeys(text, { scanner: 'us', computer, capsLock }).map(({ key, ...stroke }, index) => ({
    ...stroke,
    text: key,
    at: 1000 + index * gapMs,
  })),
});

describe('a scanner that is tried', () => {
  test('is right where the text came through at its pace', () => {
    expect(tryScan(scanned(learningText, 'us', 12))).toEqual({
      isRead: true,
      gapMs: 12,
      isSlow: false,
      end: 'Enter',
    });
  });

  test('is right with whatever it sends before and after the code', () => {
    expect(tryScan(scanned(`~${learningText}`, 'us', 12))).toMatchObject({ isRead: true });
  });

  test('is told that it types for another layout', () => {
    expect(tryScan(scanned(learningText, 'es', 5))).toMatchObject({ isRead: true, fault: 'layout' });
  });

  test('is told that Caps Lock is on', () => {
    expect(tryScan(scanned(learningText, 'us', 5, true))).toMatchObject({ isRead: true, fault: 'caps lock' });
  });

  test('is told that it is as slow as a person', () => {
    expect(tryScan(scanned(learningText, 'us', 90))).toMatchObject({ isSlow: true, gapMs: 90 });
  });

  test('is told what came instead where it was another symbol', () => {
    expect(tryScan(scanned('HP10024', 'us', 5))).toEqual({ isRead: false, text: 'HP10024' });
  });
});
