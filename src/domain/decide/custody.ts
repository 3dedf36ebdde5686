/** The rules of who may take which device out: there is no way round them at the desk. */
import type { CalendarDate } from '../brand.ts';
import type { PreUseConfirmation } from '../custody/custody.ts';
import { type Device, dueStateOf, hasUnprovedTag } from '../device.ts';
import { fillMessage, type Message } from '../message.ts';
import type { Person } from '../person.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { withNote } from '../verdict.ts';
import type { Decision } from './decision.ts';
import { removalOf } from './device.ts';
import { hasLeft } from './person.ts';

/** The key of the removal ground that stands for a recall by the manufacturer. */
export const recallReason = 'removal.recall';

export interface HandOut {
  readonly user: Person;
  readonly today: CalendarDate;
  readonly expectedOn?: CalendarDate | undefined;
  /** Absent where the user has not confirmed their pre-use inspection. */
  readonly preUse?: PreUseConfirmation | undefined;
}

/** `holder` is the name of whoever has it now, if anybody. */
export const decideCheckOut = (
  device: Device,
  { user, today, expectedOn, preUse }: HandOut,
  holder: string | undefined,
  kitId?: string,
): Decision => {
  const refused =
    mayTakeOut(user) ??
    mayGoOut(device, today) ??
    isOut(device, holder) ??
    wrongReturn(device, today, expectedOn);
  if (refused !== undefined) return refused;
  if (preUse === undefined) return preUseNeeded(device, user);
  return [
    {
      type: 'device.checked-out',
      benchId: device.benchId,
      userId: user.personId,
      preUse,
      ...(expectedOn === undefined ? {} : { expectedOn }),
      ...(kitId === undefined ? {} : { kitId }),
    },
  ];
};

export interface Handover extends HandOut {
  /** Whose badge was scanned as the one who hands it over; absent where only the attendant says so. */
  readonly handedOverBy?: string | undefined;
  readonly because?: string | undefined;
}

/** From one user to another, at the desk. `holder` has it by the record; the device must be fit to go out as at any check-out. */
export const decideTransfer = (
  device: Device,
  { user, today, expectedOn, preUse, handedOverBy, because }: Handover,
  holder: Person | undefined,
): Decision => {
  const { benchId, custody } = device;
  if (custody === undefined || holder === undefined) return refusal('transfer-not-out', { benchId });
  if (custody.lostOn !== undefined) return refusal('checkout-lost', { benchId, on: custody.lostOn });
  const refused = mayTakeOut(user) ?? mayGoOut(device, today) ?? wrongReturn(device, today, expectedOn);
  if (refused !== undefined) return refused;
  if (holder.personId === user.personId) return refusal('transfer-to-same', { benchId, name: user.name });
  const isByBadge = handedOverBy === custody.userId;
  if (!isByBadge && because === undefined)
    return refusal('transfer-reason-needed', { benchId, name: holder.name }, 'because');
  if (preUse === undefined) return preUseNeeded(device, user);
  return [
    {
      type: 'device.transferred',
      benchId,
      fromUserId: custody.userId,
      toUserId: user.personId,
      preUse,
      ...(isByBadge || because === undefined ? {} : { because }),
      ...(expectedOn === undefined ? {} : { expectedOn }),
    },
  ];
};

/** Writes a device off that was never returned. What stays of it is out of service, wherever it turns up. */
export const decideLost = (device: Device, holder: string, because: string, sentence: Message): Decision => {
  const { benchId, custody } = device;
  if (custody === undefined) return refusal('lost-not-out', { benchId });
  if (custody.lostOn !== undefined) return refusal('lost-already', { benchId, on: custody.lostOn });
  const had = { user: holder, date: custody.since.on };
  const words = withNote(fillMessage(sentence, { en: had, es: had }), because);
  const removal =
    device.standing === 'scrapped'
      ? []
      : removalOf(device, [{ key: 'custody.lost', zone: 'whole-device', effect: 'remove', sentence: words }]);
  return [{ type: 'device.lost', benchId, userId: custody.userId, because }, ...removal];
};

/** Why a person may not take a device out, or `undefined` where they may. */
export const mayTakeOut = (user: Person): Refusal | undefined => {
  if (user.left !== undefined) return hasLeft(user);
  return user.roles.includes('user')
    ? undefined
    : refusal('checkout-not-a-user', { name: user.name }, 'userId');
};

/** Why a device may not leave the desk on a day, or `undefined` where it may: the gravest reason first. */
export const mayGoOut = (device: Device, today: CalendarDate): Refusal | undefined => {
  const { benchId } = device;
  switch (device.standing) {
    case 'scrapped':
      return refusal('checkout-scrapped', { benchId });
    case 'at manufacturer':
      return refusal('checkout-at-manufacturer', { benchId });
    case 'quarantined':
      return quarantined(device);
    case 'new':
      return refusal('checkout-never-inspected', { benchId });
    case 'in service':
      return unfitInService(device, today);
  }
};

const quarantined = ({ benchId, reasons }: Device): Refusal => {
  const recall = reasons.find(({ key }) => key === recallReason);
  if (recall !== undefined) return refusal('checkout-recalled', { benchId });
  const [first] = reasons;
  return first === undefined
    ? refusal('checkout-quarantined-unexplained', { benchId })
    : refusal('checkout-quarantined', { benchId, reason: first.sentence });
};

const unfitInService = (device: Device, today: CalendarDate): Refusal | undefined => {
  const { benchId, openInspection, presumedIdentity, dueOn, currentTag } = device;
  if (presumedIdentity !== undefined) return refusal('checkout-identity-presumed', { benchId });
  if (device.marking.some(({ state }) => state === 'illegible' || state === 'missing'))
    return refusal('checkout-marking-not-intact', { benchId });
  if (openInspection !== undefined)
    return refusal('checkout-inspection-open', { benchId, inspection: openInspection });
  if (dueOn === undefined || isLate(device, today))
    return refusal('checkout-overdue', { benchId, dueOn: dueOn ?? '—' });
  if (currentTag?.kind !== 'status') return refusal('checkout-no-status-tag', { benchId });
  return hasUnprovedTag(device)
    ? refusal('checkout-tag-not-proved', { benchId, tagNumber: currentTag.tagNumber })
    : undefined;
};

const isLate = (device: Device, today: CalendarDate): boolean => {
  const state = dueStateOf(device, today, 0);
  return state !== 'current' && state !== 'due soon';
};

const isOut = ({ benchId, custody }: Device, holder: string | undefined): Refusal | undefined =>
  custody === undefined
    ? undefined
    : refusal('checkout-already-out', { benchId, name: holder ?? custody.userId, on: custody.since.on });

/** A device does not go out for longer than it is in time. */
const wrongReturn = (
  { benchId, dueOn }: Device,
  today: CalendarDate,
  expectedOn: CalendarDate | undefined,
): Refusal | undefined => {
  if (expectedOn === undefined) return undefined;
  if (expectedOn < today) return refusal('checkout-return-in-past', {}, 'expectedOn');
  return dueOn !== undefined && expectedOn > dueOn
    ? refusal('checkout-return-after-due', { benchId, dueOn, expectedOn }, 'expectedOn')
    : undefined;
};

const preUseNeeded = ({ benchId }: Device, { name }: Person): Refusal =>
  refusal('checkout-pre-use-needed', { benchId, name }, 'preUse');
