/** Why the person at the window cannot sign an inspection, as far as the window can tell. */
import { calendarDate } from '../../../src/domain/brand.ts';
import { competenceOn } from '../../../src/domain/competence.ts';
import type { PersonView } from '../../../src/station/person-view.ts';
import type { InspectionView } from '../../../src/station/views.ts';

export type SigningFault =
  | { readonly kind: 'not signed in' }
  | { readonly kind: 'not designated' | 'out of scope' | 'no PIN'; readonly name: string }
  | { readonly kind: 'not yet designated' | 'training expired'; readonly name: string; readonly date: string }
  | { readonly kind: 'answers by others'; readonly name: string; readonly count: number };

/** The first thing that is in the way; `today` is the station's date, `modelSheetId` the type of the device. The station has the last word. */
export const signingFault = (
  inspection: Pick<InspectionView, 'answers'>,
  person: PersonView | undefined,
  today: string,
  modelSheetId?: string,
): SigningFault | undefined => {
  if (person === undefined) return { kind: 'not signed in' };
  const { name, personId } = person;
  const device = modelSheetId === undefined ? undefined : { modelSheetId };
  const competence = competenceOn(person, calendarDate(today), device);
  switch (competence.ground) {
    case 'designated':
      break;
    case 'not designated':
    case 'left':
    case 'designation ended':
      return { kind: 'not designated', name };
    case 'not yet designated':
      return { kind: 'not yet designated', name, date: competence.designation.designatedOn };
    case 'training expired':
      return { kind: 'training expired', name, date: competence.designation.trainingValidUntil };
    case 'out of scope':
      return { kind: 'out of scope', name };
  }
  if (!person.pinSet) return { kind: 'no PIN', name };
  const count = Object.values(inspection.answers).filter(({ byId }) => byId !== personId).length;
  return count > 0 ? { kind: 'answers by others', name, count } : undefined;
};
