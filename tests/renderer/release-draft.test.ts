/** Release rules of the employer as they are put together in the Program screen. */
import { expect, test } from 'vitest';
import english from '../../assets/messages/en/program.json' with { type: 'json' };
import {
  kindsToAsk,
  needsOfRule,
  strictNeeds,
  strictRelease,
} from '../../renderer/screens/program/release-draft.ts';
import { weakness } from '../../src/domain/held/release-rules.ts';
import { releaseRules } from '../support/shipped-rules.ts';

test('what is asked for besides is added, and narrows what was a choice', () => {
  const fall = needsOfRule(releaseRules, 'fall');
  expect(fall).toEqual([['investigation'], ['manufacturer-word', 'repair-certificate']]);
  expect(strictNeeds(fall, ['repair-certificate'])).toEqual([['investigation'], ['repair-certificate']]);
  expect(strictNeeds(fall, ['doubt-settled'])).toEqual([
    ['investigation'],
    ['manufacturer-word', 'repair-certificate'],
    ['doubt-settled'],
  ]);
});

test('nothing more is no rule; more persons alone are one', () => {
  expect(strictRelease(releaseRules, 'parts', [], 2)).toBeUndefined();
  expect(strictRelease(releaseRules, 'parts', ['repair-certificate'], 2)).toBeUndefined();
  expect(strictRelease(releaseRules, 'doubt', [], 3)).toEqual({
    for: 'doubt',
    needs: [['doubt-settled', 'repair-certificate']],
    persons: 3,
  });
});

test('whatever can be put together is never weaker than the trade', () => {
  const kinds = kindsToAsk(releaseRules).map(({ key }) => key);
  for (const { key } of releaseRules.rules)
    for (let chosen = 1; chosen < 2 ** kinds.length; chosen += 1) {
      const besides = kinds.filter((_, place) => (chosen >> place) % 2 === 1);
      const rule = strictRelease(releaseRules, key, besides, 2);
      if (rule !== undefined && weakness(releaseRules, rule) !== undefined)
        throw new Error(`${key}: ${besides.join()}`);
    }
});

test('every release rule has a name on the screen', () => {
  expect(Object.keys(english.release.name).toSorted()).toEqual(
    releaseRules.rules.map(({ key }) => key).toSorted(),
  );
});
