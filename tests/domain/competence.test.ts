/** Who was a competent person on a day, for a device, and on what that rests; the days are counted by hand. */
import { describe, expect, test } from 'vitest';
import { competenceOn, designationsOf } from '../../src/domain/competence.ts';
import type { Person } from '../../src/domain/person.ts';
import { trainingNotice } from '../../src/domain/training-notice.ts';
import { added, day, designated, designation, personAfter } from '../support/sample-person.ts';

const groundOn = (person: Person, on: string, modelSheetId?: string): string =>
  competenceOn(person, day(on), modelSheetId === undefined ? undefined : { modelSheetId }).ground;

describe('a designation', () => {
  const person = personAfter(['2025-01-10', added()], ['2025-01-10', designated()]);

  test('counts from its day to the last day of the training, both included', () => {
    expect(groundOn(person, '2025-01-09')).toBe('not yet designated');
    expect(groundOn(person, '2025-01-10')).toBe('designated');
    expect(groundOn(person, '2026-01-10')).toBe('designated');
    expect(groundOn(person, '2026-01-11')).toBe('training expired');
  });

  test('without a scope, as every designation before there were scopes, covers every type of device', () => {
    expect(groundOn(person, '2025-06-01', 'M001')).toBe('designated');
    expect(groundOn(person, '2025-06-01', 'M999')).toBe('designated');
  });

  test('with a scope covers the types that it names, and no other', () => {
    const narrow = personAfter(['2025-01-10', added()], ['2025-01-10', designated({ scope: ['M001'] })]);
    expect(groundOn(narrow, '2025-06-01', 'M001')).toBe('designated');
    expect(groundOn(narrow, '2025-06-01', 'M002')).toBe('out of scope');
    expect(groundOn(narrow, '2025-06-01')).toBe('designated');
  });

  test('is missing where nobody was ever designated', () => {
    expect(groundOn(personAfter(['2025-01-10', added()]), '2025-06-01')).toBe('not designated');
  });

  test('that ended does not count from that day on, and did before', () => {
    const ended = personAfter(
      ['2025-01-10', added()],
      ['2025-01-10', designated()],
      [
        '2025-05-20',
        {
          type: 'person.designation-ended',
          personId: 'P002',
          endedOn: day('2025-05-01'),
          because: 'New duties',
        },
      ],
    );
    expect(groundOn(ended, '2025-04-30')).toBe('designated');
    expect(competenceOn(ended, day('2025-05-01'))).toMatchObject({
      ground: 'designation ended',
      on: '2025-05-01',
    });
    expect(ended.designation).toBeUndefined();
  });

  test('that was replaced by a narrower one still answers for the days before', () => {
    const narrowed = personAfter(
      ['2025-01-10', added()],
      ['2025-01-10', designated()],
      ['2025-07-01', designated({ designatedOn: day('2025-07-01'), scope: ['M001'] })],
    );
    expect(groundOn(narrowed, '2025-06-30', 'M002')).toBe('designated');
    expect(groundOn(narrowed, '2025-07-01', 'M002')).toBe('out of scope');
    expect(groundOn(narrowed, '2025-07-01', 'M001')).toBe('designated');
    expect(designationsOf(narrowed)).toMatchObject([
      { designation: { designatedOn: '2025-01-10' }, ended: { on: '2025-07-01', how: 'replaced' } },
      { designation: { designatedOn: '2025-07-01', scope: ['M001'] }, recorded: { by: 'P001' } },
    ]);
  });

  test('that was renewed in time leaves no day between, and its training is that of each time', () => {
    const renewed = personAfter(
      ['2025-01-10', added()],
      ['2025-01-10', designated()],
      ['2026-03-01', designated({ designatedOn: day('2026-03-01'), trainingValidUntil: day('2027-03-01') })],
    );
    expect(groundOn(renewed, '2026-01-10')).toBe('designated');
    expect(groundOn(renewed, '2026-02-01')).toBe('training expired');
    expect(groundOn(renewed, '2026-03-01')).toBe('designated');
  });
});

describe('leaving', () => {
  const gone = personAfter(
    ['2025-01-10', added()],
    ['2025-01-10', designated()],
    ['2025-09-01', { type: 'person.left', personId: 'P002', leftOn: day('2025-09-01'), because: 'Moved' }],
  );

  test('ends the designation and keeps the answer for the days before', () => {
    expect(groundOn(gone, '2025-08-31')).toBe('designated');
    expect(groundOn(gone, '2025-09-01')).toBe('left');
    expect(gone.designation).toBeUndefined();
  });

  test('and coming back takes a new designation', () => {
    const back = personAfter(
      ['2025-01-10', added()],
      ['2025-01-10', designated()],
      ['2025-09-01', { type: 'person.left', personId: 'P002', leftOn: day('2025-09-01'), because: 'Moved' }],
      ['2025-11-01', { type: 'person.returned', personId: 'P002', because: 'Back' }],
    );
    expect(back.left).toBeUndefined();
    expect(groundOn(back, '2025-11-02')).toBe('designation ended');
    expect(groundOn(back, '2025-08-31')).toBe('designated');
  });
});

/** 30 days: common practice, no source. */
test('training is to be seen to from 30 days before its end, and once it has ended', () => {
  const person = { designation: designation({ trainingValidUntil: day('2026-03-31') }) };
  expect(trainingNotice(person, day('2026-02-28'))).toBeUndefined();
  expect(trainingNotice(person, day('2026-03-01'))).toBe('ends soon');
  expect(trainingNotice(person, day('2026-03-31'))).toBe('ends soon');
  expect(trainingNotice(person, day('2026-04-01'))).toBe('expired');
  expect(trainingNotice({}, day('2026-04-01'))).toBeUndefined();
});
