import { describe, expect, test } from 'vitest';
import { benchIdFrom } from '../../../src/domain/bench-id/bench-id.ts';
import { judgeReading, judgeTexts } from './judge.ts';

const hanging = benchIdFrom([1, 2, 3, 4, 5, 6]);
const second = benchIdFrom([7, 7, 7, 7, 7, 7]);
const elsewhere = benchIdFrom([9, 9, 9, 9, 9, 9]);
const tagText = (benchId: string) => `SRL H4RP ${benchId} TAG4 PASS 20261124 DUE 20271124 9T4QK2MX`;

describe('a general decoder', () => {
  test('reads a picture where any of its texts gives the bench ID', () => {
    expect(judgeTexts([hanging], [hanging])).toEqual({ right: true, wrong: false });
    expect(judgeTexts(['4006381333931', tagText(hanging)], [hanging])).toEqual({ right: true, wrong: false });
    expect(judgeTexts([], [hanging])).toEqual({ right: false, wrong: false });
    expect(judgeTexts(['SRL H4RP'], [hanging])).toEqual({ right: false, wrong: false });
  });

  test('is wrong where one gives another ID, though the right one be there too', () => {
    expect(judgeTexts([elsewhere], [hanging])).toEqual({ right: false, wrong: true });
    expect(judgeTexts([hanging, tagText(elsewhere)], [hanging])).toEqual({ right: true, wrong: true });
    expect(judgeTexts(['0000000001'], [hanging]).wrong).toBe(true);
  });
});

describe('our reader', () => {
  test('is right with the one ID, wrong with another, and neither with none', () => {
    const read = (benchId: typeof hanging) =>
      judgeReading({ kind: 'read', benchId, evidence: [] }, [hanging]);
    expect(read(hanging)).toMatchObject({ right: true, wrong: false });
    expect(read(elsewhere)).toMatchObject({ right: false, wrong: true });
    expect(judgeReading({ kind: 'none' }, [hanging])).toMatchObject({ right: false, wrong: false });
  });

  test('must say of two tags that they are two', () => {
    const both = [hanging, second] as const;
    expect(judgeReading({ kind: 'several tags', benchIds: both }, both)).toMatchObject({
      right: true,
      wrong: false,
      saidSeveral: true,
    });
    expect(judgeReading({ kind: 'several tags', benchIds: [second] }, both)).toEqual({
      right: false,
      wrong: false,
      oneOfTwo: false,
      saidSeveral: true,
    });
    expect(judgeReading({ kind: 'read', benchId: second, evidence: [] }, both)).toEqual({
      right: false,
      wrong: false,
      oneOfTwo: true,
      saidSeveral: false,
    });
    expect(judgeReading({ kind: 'several tags', benchIds: [hanging, elsewhere] }, both).wrong).toBe(true);
  });

  test('is right about a picture without a tag where it says so, and wrong with any ID', () => {
    expect(judgeReading({ kind: 'none' }, [])).toMatchObject({ right: true, wrong: false });
    expect(judgeReading({ kind: 'read', benchId: hanging, evidence: [] }, [])).toMatchObject({
      right: false,
      wrong: true,
    });
  });
});
