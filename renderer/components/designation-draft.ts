/** The written designation of a competent person as it is typed. */
import { calendarDate } from '../../src/domain/brand.ts';
import type { Designation } from '../../src/domain/person.ts';

/** Dates in ISO 8601, or empty. */
export interface DesignationDraft {
  readonly designatedBy: string;
  readonly designatedOn: string;
  readonly document: string;
  readonly trainingCourse: string;
  readonly trainedOn: string;
  readonly trainingValidUntil: string;
}

export const emptyDesignation: DesignationDraft = {
  designatedBy: '',
  designatedOn: '',
  document: '',
  trainingCourse: '',
  trainedOn: '',
  trainingValidUntil: '',
};

/** What is known of a designation already, to be written anew. */
export const draftOf = (known: Designation): DesignationDraft => ({
  designatedBy: known.designatedBy,
  designatedOn: known.designatedOn,
  document: known.document ?? '',
  trainingCourse: known.trainingCourse ?? '',
  trainedOn: known.trainedOn ?? '',
  trainingValidUntil: known.trainingValidUntil,
});

/** The designation without its scope; what may be left empty and is, is absent. */
export const designationFrom = (draft: DesignationDraft): Omit<Designation, 'scope'> => ({
  designatedBy: draft.designatedBy,
  designatedOn: calendarDate(draft.designatedOn),
  trainingValidUntil: calendarDate(draft.trainingValidUntil),
  ...(draft.document.trim() === '' ? {} : { document: draft.document }),
  ...(draft.trainingCourse.trim() === '' ? {} : { trainingCourse: draft.trainingCourse }),
  ...(draft.trainedOn === '' ? {} : { trainedOn: calendarDate(draft.trainedOn) }),
});
