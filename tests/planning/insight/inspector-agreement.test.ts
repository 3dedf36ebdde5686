/** How far inspectors agree, on pairs that can be counted by hand. */
import { expect, test } from 'vitest';
import {
  inspectorAgreement,
  type Judged,
  type JudgedPair,
} from '../../../src/planning/insight/inspector-agreement.ts';

const judged = (checks: Record<string, 'good' | 'removes'>): Judged => ({
  verdict: Object.values(checks).includes('removes') ? 'remove from service' : 'pass',
  checks: new Map(Object.entries(checks)),
});
const good = judged({ hook: 'good', brake: 'good' });
const hook = judged({ hook: 'removes', brake: 'good' });
const brake = judged({ hook: 'good', brake: 'removes' });

const pairs = (count: number, first: Judged, second: Judged): readonly JudgedPair[] =>
  Array.from({ length: count }, (_, index) => ({ benchId: `D${index % 5}`, first, second }));

test('the verdict and each check are compared by themselves', () => {
  // Twelve pass both, six remove for the hook both, two differ on the part and agree on the verdict, two by the second alone.
  const found = inspectorAgreement([
    ...pairs(12, good, good),
    ...pairs(6, hook, hook),
    ...pairs(2, hook, brake),
    ...pairs(2, good, brake),
  ]);
  expect(found.both).toEqual({
    pass: 12,
    'differ, first removes': 0,
    'differ, second removes': 2,
    remove: 8,
  });
  // By hand, of 22: observed 20/22; by chance (14 · 12 + 8 · 10) / 22² = 248/484; kappa = (440 − 248) / (484 − 248).
  expect(found.verdict.kappa).toBeCloseTo(192 / 236, 12);
  // The hook: 20 of 22 the same; by chance (14 · 16 + 8 · 6) / 484 = 272/484.
  const [ofHook, ofBrake] = found.checks;
  expect(ofHook).toMatchObject({ check: 'hook', agreement: { pairs: 22 } });
  expect(ofHook?.agreement.kappa).toBeCloseTo((440 - 272) / (484 - 272), 12);
  // The first never blames the brake, the second four times: no better than chance.
  expect(ofBrake?.agreement.kappa).toBeCloseTo(0, 12);
  expect([found.devices, found.isFew, found.checksWithFew]).toEqual([5, false, 0]);
});

test('fewer than twenty pairs are too few, and of a check with fewer nothing is said', () => {
  const found = inspectorAgreement(pairs(19, good, good));
  expect([found.isFew, found.checks, found.checksWithFew]).toEqual([true, [], 2]);
  const mixed = inspectorAgreement([...pairs(19, good, good), ...pairs(1, judged({ hook: 'good' }), good)]);
  expect([mixed.isFew, mixed.checks.map(({ check }) => check), mixed.checksWithFew]).toEqual([
    false,
    ['hook'],
    1,
  ]);
});

test('without pairs there is nothing to say', () => {
  expect(inspectorAgreement([])).toMatchObject({
    devices: 0,
    verdict: { pairs: 0 },
    isFew: true,
    checks: [],
  });
});
