/** The name and the badge that a person had when something was recorded; events are numbered as they were recorded. */
import { expect, test } from 'vitest';
import { knownAs } from '../../src/domain/known-as.ts';
import type { Person } from '../../src/domain/person.ts';
import { day } from '../support/sample-person.ts';

const on = day('2025-01-10');
const by = 'P001';
/** Added as event 4, misspelt; corrected as 9, a new badge as 12, married as 20. */
const person: Person = {
  personId: 'P002',
  name: 'Teodora Vance',
  badge: 'HP20001',
  roles: ['inspector'],
  history: [
    {
      seq: 4,
      on,
      by,
      event: {
        type: 'person.added',
        person: { personId: 'P002', name: 'Teodora Arendal', badge: 'HP10002', roles: ['inspector'] },
      },
    },
    {
      seq: 12,
      on,
      by,
      event: { type: 'person.badge-changed', personId: 'P002', badge: 'HP20001', because: 'Lost' },
    },
    {
      seq: 20,
      on,
      by,
      event: { type: 'person.name-changed', personId: 'P002', name: 'Teodora Vance', because: 'Married' },
    },
  ],
  amendments: [
    {
      seq: 9,
      amends: 4,
      on,
      by,
      because: 'Misspelt',
      correction: { field: 'name', was: 'Teodora Arendal', now: 'Teodora Arandal' },
    },
  ],
};

test.each([
  [4, 'Teodora Arendal', 'HP10002'],
  [8, 'Teodora Arendal', 'HP10002'],
  [9, 'Teodora Arandal', 'HP10002'],
  [12, 'Teodora Arandal', 'HP20001'],
  [19, 'Teodora Arandal', 'HP20001'],
  [20, 'Teodora Vance', 'HP20001'],
  [999, 'Teodora Vance', 'HP20001'],
])('with event %i the person is %s with badge %s', (seq, name, badge) => {
  expect(knownAs(person, seq)).toEqual({ name, badge });
});

test('without a history the person is known as now', () => {
  const { history: _history, ...bare } = person;
  expect(knownAs(bare, 1)).toEqual({ name: 'Teodora Vance', badge: 'HP20001' });
});
