/** The rules of scrapping a device: made unusable before a witness, and final (common practice, no source). */
import type { Device } from '../../device.ts';
import type { DomainEvent } from '../../event.ts';
import type { DocumentFile } from '../../held/evidence.ts';
import type { Person } from '../../person.ts';
import { refusal } from '../../refusal.ts';
import type { Decision } from '../decision.ts';
import { heldFault, notHere } from './evidence.ts';

export interface Scrapping {
  readonly lifelineCut: boolean;
  readonly markingDefaced: boolean;
  readonly witness: Person;
  readonly photos: readonly DocumentFile[];
}

/** Only what is held, and lies here: nobody cuts what is still recorded out or at its manufacturer. */
export const decideScrap = (
  device: Device,
  { lifelineCut, markingDefaced, witness, photos }: Scrapping,
  person: Person,
): Decision => {
  const refused = heldFault(device) ?? notHere(device);
  if (refused !== undefined) return refused;
  const { benchId, openInspection } = device;
  if (!lifelineCut) return refusal('scrap-lifeline-not-cut', { benchId }, 'lifelineCut');
  if (!markingDefaced) return refusal('scrap-marking-not-defaced', { benchId }, 'markingDefaced');
  if (witness.personId === person.personId)
    return refusal('scrap-witness-needed', { name: person.name }, 'witness');
  if (witness.left !== undefined)
    return refusal('person-has-left', { name: witness.name, on: witness.left.on }, 'witness');
  if (photos.length === 0) return refusal('scrap-photo-needed', { benchId }, 'photos');
  const open = (device.fallCases ?? []).find(({ closedOn }) => closedOn === undefined);
  if (open !== undefined) return refusal('scrap-fall-case-open', { benchId, fallCase: open.fallCase });
  const abandoned: readonly DomainEvent[] =
    openInspection === undefined
      ? []
      : [{ type: 'inspection.abandoned', inspection: openInspection, benchId, why: 'Scrapped.' }];
  return [
    ...abandoned,
    {
      type: 'device.scrapped',
      benchId,
      lifelineCut: true,
      markingDefaced: true,
      witness: witness.personId,
      photos: [...photos],
    },
  ];
};
