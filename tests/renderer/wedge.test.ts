/** The keyboard wedge: what is a scan, what is a person typing. */
import { describe, expect, it } from 'vitest';
import {
  type Burst,
  lacksEnd,
  noBurst,
  pressKey,
  settledScan,
  type WedgeDecision,
} from '../../renderer/scan/wedge.ts';
import type { Scanner } from '../../src/domain/scanner/scanner.ts';
import { type Stroke, struck } from './struck.ts';

/** A scanner as it was learnt. */
const learnt: Scanner = { gapMs: 10, end: 'Enter', prefix: '', suffix: '', usesUsPlaces: false };

/** The keys of a text, one every `gapMs`, then `end` after `endGapMs`. */
const strokes = (text: string, gapMs: number, end: string, endGapMs = gapMs, from = 1000): Stroke[] => {
  const keys = [...text].map((key, index) => ({ key, at: from + index * gapMs }));
  return [...keys, { key: end, at: from + (text.length - 1) * gapMs + endGapMs }];
};

const decisions = (keys: readonly Stroke[], scanner?: Scanner): WedgeDecision[] => {
  let burst = noBurst;
  return keys.map((stroke) => {
    const pressed = pressKey(burst, struck(stroke), scanner);
    burst = pressed.burst;
    return pressed.decision;
  });
};

const textOf = (keys: Burst): string => keys.map(({ text }) => text).join('');

const scans = (keys: readonly Stroke[], scanner?: Scanner): string[] =>
  decisions(keys, scanner).flatMap((decision) =>
    decision.kind === 'scan' ? [textOf(decision.scan.keys)] : [],
  );

describe('a keyboard-wedge scanner', () => {
  it('is recognised by a burst that ends with Enter', () => {
    expect(scans(strokes('K7M3X4Q9TD', 5, 'Enter'))).toEqual(['K7M3X4Q9TD']);
  });

  it('is recognised by a burst that ends with Tab', () => {
    expect(scans(strokes('HP10031', 10, 'Tab'))).toEqual(['HP10031']);
  });

  it('may take 35 ms from key to key and 100 ms to its Enter with four characters, and no longer', () => {
    expect(scans(strokes('ABCD', 35, 'Enter', 100))).toEqual(['ABCD']);
    expect(scans(strokes('ABCD', 36, 'Enter', 36))).toEqual([]);
    expect(scans(strokes('ABCD', 35, 'Enter', 101))).toEqual([]);
  });

  it.each([2, 5, 10, 20, 36, 45, 60, 75])('is recognised at %i ms a character by six of them', (gapMs) => {
    expect(scans(strokes('HP1003', gapMs, 'Enter'))).toEqual(['HP1003']);
  });

  it('is taken for sure when it is fast, and may be a person when it is slow', () => {
    const isSure = (gapMs: number) =>
      decisions(strokes('HP10031', gapMs, 'Enter')).flatMap((each) =>
        each.kind === 'scan' ? [each.scan.isSure] : [],
      );
    expect(isSure(10)).toEqual([true]);
    expect(isSure(60)).toEqual([false]);
  });

  it('leaves keys apart that a person struck just before it began', () => {
    const keys = [{ key: '7', at: 955 }, ...strokes('HP10031', 5, 'Enter')];
    const [scan] = decisions(keys).flatMap((each) => (each.kind === 'scan' ? [each.scan] : []));
    expect(textOf(scan!.keys)).toBe('7HP10031');
    expect(scan!.lead).toBe(1);
  });

  it('ends with a pause only where it was learnt to', () => {
    const keys = strokes('HP10031', 5, 'Enter').slice(0, -1);
    let burst = noBurst;
    for (const stroke of keys) burst = pressKey(burst, struck(stroke)).burst;
    expect(settledScan(burst, undefined)).toBeUndefined();
    expect(settledScan(burst, { ...learnt, end: 'Enter' })).toBeUndefined();
    expect(textOf(settledScan(burst, { ...learnt, end: 'none' })!.keys)).toBe('HP10031');
  });

  it('that sends no Enter is told from a person by eight characters at its pace', () => {
    const burstOf = (text: string, gapMs: number): Burst => {
      let burst = noBurst;
      for (const stroke of strokes(text, gapMs, 'Enter').slice(0, -1))
        burst = pressKey(burst, struck(stroke)).burst;
      return burst;
    };
    expect(lacksEnd(burstOf('K7M3X4Q9', 10))).toBe(true);
    expect(lacksEnd(burstOf('K7M3X4Q', 10))).toBe(false);
    expect(lacksEnd(burstOf('K7M3X4Q9', 60))).toBe(false);
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

  it('is left alone at eighty milliseconds a key, which is as fast as anybody types', () => {
    expect(scans(strokes('HP10031', 80, 'Enter'))).toEqual([]);
  });

  it('is left alone when six keys come quickly but unevenly', () => {
    const keys = [1000, 1020, 1095, 1110, 1180, 1202].map((at) => ({ key: 'a', at }));
    expect(scans([...keys, { key: 'Enter', at: 1262 }])).toEqual([]);
  });
});
