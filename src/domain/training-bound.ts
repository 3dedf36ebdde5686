/** How long a training counts where the program bounds it, whatever its certificate says. */
import type { CalendarDate } from './brand.ts';
import { addMonths } from './calendar.ts';
import type { Designation } from './person.ts';

/** The last day, so many months after the training; after the designation where nobody said when the training was. */
export const latestTrainingDay = (
  { trainedOn, designatedOn }: Pick<Designation, 'trainedOn' | 'designatedOn'>,
  validityMonths: number,
): CalendarDate => addMonths(trainedOn ?? designatedOn, validityMonths);
