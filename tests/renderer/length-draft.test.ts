/** What is entered of a length for the plan of returns. */
import { expect, test } from 'vitest';
import {
  lengthDraftOf,
  lengthFaults,
  lengthPlanOf,
} from '../../renderer/screens/returns-plan/length-draft.ts';
import { metres } from '../../src/domain/brand.ts';

const empty = lengthDraftOf(undefined);
const faultsOf = (change: Partial<typeof empty>) => [...lengthFaults({ ...empty, ...change })];

test('what nobody knows may stay empty, and is not in the plan', () => {
  expect(faultsOf({})).toEqual([]);
  expect(lengthPlanOf(empty, metres(6))).toEqual({ lengthM: 6 });
});

test('one number counts in every month, and twelve numbers stand each in its own', () => {
  const always = lengthPlanOf({ ...empty, always: '4' }, metres(6));
  expect(always.needed).toEqual(Array.from({ length: 12 }, () => 4));
  const monthly = Array.from({ length: 12 }, (_, month) => String(month));
  const seasons = lengthPlanOf({ ...empty, byMonth: true, monthly }, metres(6));
  expect(seasons.needed).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
  expect(lengthDraftOf(seasons)).toMatchObject({ byMonth: true, monthly });
  expect(lengthDraftOf(always)).toMatchObject({ byMonth: false, always: '4' });
});

test('a new device has a price and a lead time, or nothing', () => {
  expect(faultsOf({ price: '400' })).toEqual(['leadTimeDays']);
  expect(faultsOf({ leadTimeDays: '30' })).toEqual(['price']);
  expect(faultsOf({ lifeYears: '10' })).toEqual(['price', 'leadTimeDays']);
  expect(lengthPlanOf({ ...empty, price: '89,50', leadTimeDays: '30', lifeYears: '' }, metres(6))).toEqual({
    lengthM: 6,
    newDevice: { price: 89.5, leadTimeDays: 30 },
  });
});

test('what is no number is named', () => {
  expect(faultsOf({ always: 'some' })).toEqual(['needed']);
  expect(faultsOf({ byMonth: true })).toEqual(['needed']);
  expect(faultsOf({ price: '1.234', leadTimeDays: 'soon', lifeYears: '0' })).toEqual([
    'price',
    'leadTimeDays',
    'lifeYears',
  ]);
});
