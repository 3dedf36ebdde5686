/** What a program that bounds how long a training counts means for those who are designated; the dates are counted by hand. */
import { describe, expect, test } from 'vitest';
import { competenceOn } from '../../src/domain/competence.ts';
import { boundTrainings } from '../../src/domain/decide/bound-trainings.ts';
import type { DomainEvent } from '../../src/domain/event.ts';
import type { Designation } from '../../src/domain/person.ts';
import { added, day, designated, personAfter } from '../support/sample-person.ts';

const holder = (changes: Partial<Designation>) =>
  personAfter(['2024-01-10', added()], ['2024-01-10', designated(changes)]);

/** The end of the training after a program of so many months, or `undefined` where nothing changes. */
const boundEnd = (changes: Partial<Designation>, months: number): string | undefined => {
  const [event] = boundTrainings([holder(changes)], months);
  return event?.type === 'person.designated' ? event.designation.trainingValidUntil : undefined;
};

describe('a training behind a designation', () => {
  test.each([
    // Trained, certificate until, months of the program, its end then. A day that a month has not is its last (ISO 8601).
    ['2024-01-10', '2027-01-10', 24, '2026-01-10'],
    ['2024-02-29', '2027-02-28', 24, '2026-02-28'],
    ['2024-02-29', '2029-01-01', 48, '2028-02-29'],
    ['2023-08-31', '2026-08-31', 6, '2024-02-29'],
    ['2023-12-31', '2025-12-31', 18, '2025-06-30'],
  ])('of %s with a certificate until %s ends after %i months on %s', (trainedOn, until, months, end) => {
    const changes = { trainedOn: day(trainedOn), trainingValidUntil: day(until) };
    expect(boundEnd(changes, months)).toBe(end);
  });

  test.each([
    ['2024-01-10', '2025-12-31', 24],
    ['2024-01-10', '2026-01-10', 24],
  ])('of %s whose certificate ends on %s is not made longer by %i months', (trainedOn, until, months) => {
    const changes = { trainedOn: day(trainedOn), trainingValidUntil: day(until) };
    expect(boundEnd(changes, months)).toBeUndefined();
  });

  test('of which nobody said when it was counts from the designation', () => {
    const changes = { designatedOn: day('2024-03-15'), trainingValidUntil: day('2030-01-01') };
    expect(boundEnd(changes, 12)).toBe('2025-03-15');
  });

  test('stays as it is without a bound, and of those who have left', () => {
    const long = { trainingValidUntil: day('2030-01-01') };
    expect(boundTrainings([holder(long)], undefined)).toEqual([]);
    const left: DomainEvent = {
      type: 'person.left',
      personId: 'P002',
      leftOn: day('2024-05-01'),
      because: 'Moved',
    };
    const gone = personAfter(['2024-01-10', added()], ['2024-01-10', designated(long)], ['2024-05-01', left]);
    expect(boundTrainings([gone], 12)).toEqual([]);
  });
});

test('whoever was competent until a program bounded the training still was on the days before it', () => {
  const life = [
    ['2024-01-10', added()],
    [
      '2024-01-10',
      designated({
        designatedOn: day('2024-01-10'),
        trainedOn: day('2024-01-05'),
        trainingValidUntil: day('2027-01-05'),
      }),
    ],
  ] as const;
  const [bound] = boundTrainings([personAfter(...life)], 24);
  const after = personAfter(...life, ['2026-03-10', bound!]);
  // Two years after the training, that is until 5 January 2026; adopted on 10 March 2026.
  const groundOn = (on: string) => competenceOn(after, day(on)).ground;
  expect(groundOn('2026-01-05')).toBe('designated');
  expect(groundOn('2026-03-09')).toBe('designated');
  expect(groundOn('2026-03-10')).toBe('training expired');
  expect(after.designation?.trainingValidUntil).toBe('2026-01-05');
});
