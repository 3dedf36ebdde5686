/** How closely frame after frame is looked at. */
import { expect, test } from 'vitest';
import { frameLook } from '../../../renderer/camera/looks.ts';

const budgets = Array.from({ length: 30 }, (_, frames) => frameLook(frames).budgetMs);

test('four frames of five have 200 ms, and every fifth has longer: 1.2 s, and 2.4 s from the second on', () => {
  expect(budgets.filter((_, frames) => frames % 5 !== 4)).toEqual(Array.from({ length: 24 }, () => 200));
  expect(budgets.filter((_, frames) => frames % 5 === 4)).toEqual([1200, 2400, 2400, 2400, 2400, 2400]);
});

test('every other frame is looked through for makers’ codes, also among those that are looked at for longer', () => {
  const ours = Array.from({ length: 10 }, (_, frames) => frameLook(frames).oursOnly);
  expect(ours).toEqual([false, true, false, true, false, true, false, true, false, true]);
  expect([4, 9].map((frames) => ours[frames])).toEqual([false, true]);
});
