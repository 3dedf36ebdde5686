/** The rules of the written designation of a competent person: what it must say, and how it ends. */
import type { CalendarDate } from '../brand.ts';
import { type Competence, competenceOn } from '../competence.ts';
import type { Device } from '../device.ts';
import type { ModelSheet } from '../model-sheet.ts';
import type { Designation, Person } from '../person.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { latestTrainingDay } from '../training-bound.ts';
import type { Decision } from './decision.ts';
import { hasLeft } from './person.ts';

/**
 * Training and the employer's written designation make a competent person (common practice, no source). The training comes
 * before the designation, and the scope names model sheets that the station has. Where the program bounds how long a
 * training counts, in months from the training, the certificate counts no longer.
 */
export const decideDesignate = (
  person: Person,
  designation: Designation,
  today: CalendarDate,
  modelSheets: readonly ModelSheet[],
  trainingValidityMonths?: number,
): Decision => {
  const { designatedOn, trainedOn, trainingValidUntil, scope } = designation;
  if (person.left !== undefined) return hasLeft(person);
  if (designatedOn > today) return refusal('designation-in-future', {}, 'designatedOn');
  if (trainingValidUntil <= designatedOn)
    return refusal('training-ends-before-designation', {}, 'trainingValidUntil');
  if (trainedOn !== undefined && trainedOn > designatedOn)
    return refusal('training-after-designation', {}, 'trainedOn');
  const longest =
    trainingValidityMonths === undefined ? undefined : latestTrainingDay(designation, trainingValidityMonths);
  if (longest !== undefined && trainingValidUntil > longest)
    return refusal(
      'training-longer-than-program',
      { months: trainingValidityMonths ?? 0, latest: longest },
      'trainingValidUntil',
    );
  const unknown = scope?.find((id) => modelSheets.every(({ modelSheetId }) => modelSheetId !== id));
  if (unknown !== undefined) return refusal('scope-unknown-model', { modelSheetId: unknown }, 'scope');
  return [
    {
      type: 'person.designated',
      personId: person.personId,
      designation: scope === undefined ? designation : { ...designation, scope: [...new Set(scope)] },
    },
  ];
};

export const decideEndDesignation = (
  person: Person,
  { endedOn, because }: { readonly endedOn: CalendarDate; readonly because: string },
  today: CalendarDate,
): Decision => {
  const { designation, name, personId } = person;
  if (designation === undefined) return refusal('designation-none', { name });
  if (endedOn > today) return refusal('designation-end-in-future', {}, 'endedOn');
  if (endedOn < designation.designatedOn)
    return refusal('designation-ends-before-it-began', { on: designation.designatedOn }, 'endedOn');
  return [{ type: 'person.designation-ended', personId, endedOn, because }];
};

/** Why a person may not sign on a day what takes a competent person, or `undefined` where they may. */
export const incompetence = (
  person: Pick<Person, 'name' | 'designation' | 'left' | 'history'>,
  on: CalendarDate,
  device?: Pick<Device, 'modelSheetId'>,
): Refusal | undefined => sentenceFor(person.name, competenceOn(person, on, device));

const sentenceFor = (name: string, competence: Competence): Refusal | undefined => {
  switch (competence.ground) {
    case 'designated':
      return undefined;
    case 'left':
      return refusal('signer-has-left', { name, on: competence.on });
    case 'not designated':
      return refusal('signer-not-designated', { name });
    case 'not yet designated':
      return refusal('signer-not-yet-designated', { name, on: competence.designation.designatedOn });
    case 'designation ended':
      return refusal('signer-designation-ended', { name, on: competence.on });
    case 'training expired':
      return refusal('signer-training-expired', { name, on: competence.designation.trainingValidUntil });
    case 'out of scope':
      return refusal('signer-out-of-scope', { name });
  }
};
