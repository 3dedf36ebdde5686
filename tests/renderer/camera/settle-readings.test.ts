/** When frames of the camera agree well enough to act on, or to ask about. */
import { describe, expect, test } from 'vitest';
import type { SightReading } from '../../../renderer/camera/reader-messages.ts';
import { type Awaited, type SettledReading, settle } from '../../../renderer/camera/settle-readings.ts';
import { benchIdSchema } from '../../../src/domain/brand.ts';

const none: SightReading = { kind: 'none' };
const several: SightReading = { kind: 'several' };
const code = (text: string, isSure: boolean): SightReading => ({ kind: 'code', text, isSure });
const wornTag = (text: string): SightReading => ({
  kind: 'worn tag',
  benchId: benchIdSchema.parse(text),
  evidence: [],
});

const settledAfter = (...readings: readonly SightReading[]): readonly SettledReading[] => {
  let awaited: Awaited = {};
  return readings.flatMap((reading) => {
    const settlement = settle(awaited, reading);
    awaited = settlement.awaited;
    return settlement.settled === undefined ? [] : [settlement.settled];
  });
};

const [one, other] = ['GJQ81T5WX2', '4R02SSYNB2'] as const;

describe('frames of the camera', () => {
  test('of a tag or another symbol with error correction count one by one', () => {
    expect(settledAfter(none, code(one, true))).toEqual([code(one, true)]);
  });

  test('of a weaker symbology count when a second one says the same', () => {
    expect(settledAfter(code('NF-1', false))).toEqual([]);
    expect(settledAfter(code('NF-1', false), none, none, code('NF-1', false))).toEqual([code('NF-1', false)]);
    expect(settledAfter(code('NF-1', false), code('NF-7', false), code('NF-1', false))).toEqual([]);
  });

  test('of a worn tag ask for nobody before two say the same', () => {
    expect(settledAfter(wornTag(one))).toEqual([]);
    expect(settledAfter(wornTag(one), wornTag(other), wornTag(one))).toEqual([]);
    expect(settledAfter(wornTag(one), none, wornTag(one))).toEqual([wornTag(one)]);
  });

  test('that show several tags, or a code, take away what was awaited', () => {
    expect(settledAfter(wornTag(one), several, wornTag(one))).toEqual([]);
    expect(settledAfter(wornTag(one), code('NF-1', false), wornTag(one))).toEqual([]);
  });

  test('that show nothing settle nothing', () => {
    expect(settledAfter(none, several, none)).toEqual([]);
  });
});
