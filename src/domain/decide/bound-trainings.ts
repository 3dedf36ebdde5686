/**
 * What a program that bounds how long a training counts means for those who are designated: their designation stands anew,
 * with the earlier end of its training. It counts from the day of the adoption on, so nothing that was signed before loses
 * the competence with which it was, and a later program that allows more brings no training back by itself.
 */
import type { DomainEvent } from '../event.ts';
import type { Person } from '../person.ts';
import { latestTrainingDay } from '../training-bound.ts';

export const boundTrainings = (
  people: readonly Person[],
  validityMonths: number | undefined,
): readonly DomainEvent[] =>
  validityMonths === undefined
    ? []
    : people.flatMap(({ personId, designation, left }): readonly DomainEvent[] => {
        if (designation === undefined || left !== undefined) return [];
        const latest = latestTrainingDay(designation, validityMonths);
        return designation.trainingValidUntil <= latest
          ? []
          : [
              {
                type: 'person.designated',
                personId,
                designation: { ...designation, trainingValidUntil: latest },
              },
            ];
      });
