/** Why the person at the window cannot sign an inspection, as far as the window can tell. */
import type { InspectionView, PersonView } from '../../../src/station/views.ts';

export type SigningFault =
  | { readonly kind: 'not signed in' }
  | { readonly kind: 'not designated' | 'no PIN'; readonly name: string }
  | { readonly kind: 'not yet designated' | 'training expired'; readonly name: string; readonly date: string }
  | { readonly kind: 'answers by others'; readonly name: string; readonly count: number };

/** The first thing that is in the way; `today` is the station's date. The station has the last word. */
export const signingFault = (
  inspection: Pick<InspectionView, 'answers'>,
  person: PersonView | undefined,
  today: string,
): SigningFault | undefined => {
  if (person === undefined) return { kind: 'not signed in' };
  const { name, designation, personId } = person;
  if (!person.maySign) {
    if (designation === undefined) return { kind: 'not designated', name };
    return designation.designatedOn > today
      ? { kind: 'not yet designated', name, date: designation.designatedOn }
      : { kind: 'training expired', name, date: designation.trainingValidUntil };
  }
  if (!person.pinSet) return { kind: 'no PIN', name };
  const count = Object.values(inspection.answers).filter(({ byId }) => byId !== personId).length;
  return count > 0 ? { kind: 'answers by others', name, count } : undefined;
};
