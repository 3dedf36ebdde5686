/** The next step of a held device, and whose it is: one at a time, so that nobody waits for somebody who waits for them. */
import { z } from 'zod';
import type { CalendarDate } from '../brand.ts';
import { type Device, hasUnprovedTag } from '../device.ts';
import type { MissingEvidence } from './missing-evidence.ts';
import type { StepOwner } from './release-rules.ts';

export const nextSteps = [
  'check in',
  'hang tag',
  'scrap',
  'open fall case',
  'close fall case',
  'agree to evidence',
  'read marking',
  'get evidence',
  'ship batch',
  'wait for manufacturer',
  'ask manufacturer',
  'scan tag back',
  'inspect',
  'nothing',
] as const;
export const nextStepSchema = z.enum(nextSteps);
export type NextStep = z.infer<typeof nextStepSchema>;

export interface HeldStep {
  readonly step: NextStep;
  readonly owner: StepOwner;
}

/** `followUpOn` is when its batch is asked after, where it is at its manufacturer. */
export const nextStepOf = (
  device: Device,
  missing: readonly MissingEvidence[],
  today: CalendarDate,
  followUpOn?: CalendarDate | undefined,
): HeldStep => {
  const { standing, release, custody, openCheckIn, returnBatch, fallCases = [] } = device;
  if (standing === 'scrapped') return { step: 'nothing', owner: 'attendant' };
  if (standing === 'at manufacturer')
    return followUpOn !== undefined && followUpOn <= today
      ? { step: 'ask manufacturer', owner: 'attendant' }
      : { step: 'wait for manufacturer', owner: 'manufacturer' };
  if (release !== undefined) return { step: 'inspect', owner: 'competent person' };
  if (custody !== undefined || openCheckIn !== undefined) return { step: 'check in', owner: 'attendant' };
  if (hasUnprovedTag(device)) return { step: 'hang tag', owner: 'attendant' };
  const kinds = missing.flatMap((each) => each.kinds);
  if (kinds.some(({ how }) => how === 'never')) return { step: 'scrap', owner: 'attendant' };
  if (fallCases.some(({ closedOn }) => closedOn === undefined))
    return { step: 'close fall case', owner: 'competent person' };
  if (kinds.some(({ how }) => how === 'fall case'))
    return { step: 'open fall case', owner: 'competent person' };
  if (missing.some(({ unconfirmed }) => unconfirmed !== undefined))
    return { step: 'agree to evidence', owner: 'competent person' };
  if (returnBatch !== undefined) return { step: 'ship batch', owner: 'attendant' };
  const [first] = kinds;
  if (first === undefined) return { step: 'scan tag back', owner: 'attendant' };
  return isOnlyMarkingUnread(device, missing)
    ? { step: 'read marking', owner: 'competent person' }
    : { step: 'get evidence', owner: first.owner };
};

/** Everything is written and agreed to; what is left is that its whole marking is read, so that nobody presumes who it is. */
const isOnlyMarkingUnread = (device: Device, missing: readonly MissingEvidence[]): boolean =>
  device.presumedIdentity !== undefined &&
  missing.every(({ reason, kinds }) =>
    kinds.some(
      ({ key, also }) =>
        also === 'identity not presumed' &&
        (device.evidence ?? []).some(
          ({ kind, covers, confirmed, withdrawn }) =>
            kind === key && covers.includes(reason) && confirmed !== undefined && withdrawn === undefined,
        ),
    ),
  );

/** Since when it is held without a break: the first of the quarantine tags that followed one another. */
export const heldSince = ({ currentTag, pastTags }: Device): CalendarDate | undefined => {
  const tags = currentTag === undefined ? pastTags : [...pastTags, currentTag];
  const before = tags.findLastIndex(({ kind }) => kind !== 'quarantine');
  return tags[before + 1]?.issuedOn;
};
