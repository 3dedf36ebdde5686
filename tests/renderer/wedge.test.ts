/** The keyboard wedge: what is a scan, what is a person typing. */
import { describe, expect, it } from 'vitest';
import { noBurst, pressKey, type WedgeDecision } from '../../renderer/scan/wedge.ts';

interface Stroke {
  readonly key: string;
  readonly at: number;
}

/** The keys of a text, one every `gapMs`, then `end` after `endGapMs`. */
const strokes = (text: string, gapMs: number, end: string, endGapMs = gapMs, from = 1000): Stroke[] => {
  const keys = [...text].map((key, index) => ({ key, at: from + index * gapMs }));
  return [...keys, { key: end, at: from + (text.length - 1) * gapMs + endGapMs }];
};

const decisions = (keys: readonly Stroke[]): WedgeDecision[] => {
  let burst = noBurst;
  return keys.map(({ key, at }) => {
    const pressed = pressKey(burst, key, at);
    burst = pressed.burst;
    return pressed.decision;
  });
};

const scans = (keys: readonly Stroke[]): string[] =>
  decisions(keys).flatMap((decision) => (decision.kind === 'scan' ? [decision.text] : []));

describe('a keyboard-wedge scanner', () => {
  it('is recognised by a burst that ends with Enter', () => {
    expect(scans(strokes('K7M3X4Q9TD', 5, 'Enter'))).toEqual(['K7M3X4Q9TD']);
  });

  it('is recognised by a burst that ends with Tab', () => {
    expect(scans(strokes('HP10031', 10, 'Tab'))).toEqual(['HP10031']);
  });

  it('may take 35 ms from key to key and 100 ms to its Enter, and no longer', () => {
    expect(scans(strokes('ABCD', 35, 'Enter', 100))).toEqual(['ABCD']);
    expect(scans(strokes('ABCD', 36, 'Enter', 36))).toEqual([]);
    expect(scans(strokes('ABCD', 35, 'Enter', 101))).toEqual([]);
  });

  it('sends at least four characters', () => {
    expect(scans(strokes('ABCD', 5, 'Enter'))).toEqual(['ABCD']);
    expect(scans(strokes('ABC', 5, 'Enter'))).toEqual([]);
  });

  it('may press Shift for capitals in between', () => {
    const keys = [
      { key: 'Shift', at: 0 },
      { key: 'A', at: 2 },
      { key: 'b', at: 6 },
      { key: 'Shift', at: 8 },
      { key: 'C', at: 10 },
      { key: '-', at: 14 },
      { key: '9', at: 18 },
      { key: 'Enter', at: 22 },
    ];
    expect(scans(keys)).toEqual(['AbC-9']);
  });

  it('keeps the spaces of a tag text', () => {
    const text = 'SRL H4RP K7M3X43SXJ TAG3 PASS 20261124 DUE 20271124 9T4QK2MX';
    expect(scans(strokes(text, 4, 'Enter'))).toEqual([text]);
  });

  it('sends two codes one after the other as two scans', () => {
    const first = strokes('XCGOOD', 5, 'Enter');
    const second = strokes('XCNEXT', 5, 'Enter', 5, 1000 + 6 * 5 + 1);
    expect(scans([...first, ...second])).toEqual(['XCGOOD', 'XCNEXT']);
  });

  it('begins anew after what a person typed just before', () => {
    const typed = strokes('ab', 150, 'c', 150).slice(0, 3);
    const scan = strokes('WXYZ1', 5, 'Enter', 5, 2000);
    expect(scans([...typed, ...scan])).toEqual(['WXYZ1']);
  });
});

describe('a person who types', () => {
  it('is left alone at sixty words a minute, a key every 200 ms', () => {
    const kinds = decisions(strokes('N2-18-1074', 200, 'Enter')).map((decision) => decision.kind);
    expect(new Set(kinds)).toEqual(new Set(['first', 'other']));
  });

  it('is left alone when two keys fall together by chance', () => {
    const keys = [
      { key: 't', at: 0 },
      { key: 'h', at: 20 },
      { key: 'e', at: 180 },
      { key: 'Enter', at: 260 },
    ];
    expect(scans(keys)).toEqual([]);
  });

  it('may press Enter quickly after one key', () => {
    expect(scans(strokes('7', 5, 'Enter', 30))).toEqual([]);
  });

  it('breaks a burst with any key that writes nothing', () => {
    const keys = [...strokes('ABCD', 5, 'Backspace'), { key: 'Enter', at: 1030 }];
    expect(scans(keys)).toEqual([]);
  });
});
