/** The rules of the manufacturers' notices: who records one, and that whatever it means is held in the same breath. */
import { isCompetentOn } from '../competence.ts';
import type { Device } from '../device.ts';
import type { DomainEvent, Occasion } from '../event.ts';
import type { Message } from '../message.ts';
import type { Person } from '../person.ts';
import type { Notice, NoticeText } from '../recall/notice.ts';
import type { RecallMatch } from '../recall/recall-match.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Reason } from '../verdict.ts';
import { recallReason } from './custody.ts';
import type { Decision } from './decision.ts';
import { removalOf } from './device.ts';

/** A device that a notice means, certainly or possibly. */
export interface Recalled {
  readonly device: Device;
  readonly match: RecallMatch;
  /** The sentence of the tag. */
  readonly sentence: Message;
  /** What an open inspection of it had found until now. */
  readonly found: readonly Reason[];
}

export interface NewNotice {
  readonly notice: number;
  readonly text: NoticeText;
}

/** Certain and possible alike are held at once, wherever they are; a scrapped device stays what it is. */
export const decideNotice = (
  { notice, text }: NewNotice,
  known: readonly Notice[],
  recalled: readonly Recalled[],
  person: Person,
  { on }: Occasion,
): Decision => {
  const refused = mayNotRecord(person, on) ?? faultOfNotice(text, known, on);
  if (refused !== undefined) return refused;
  const matched = recalled.map(({ device, match }) => ({ benchId: device.benchId, match }));
  const recorded: DomainEvent = { type: 'notice.recorded', notice, text, matched };
  const holds = recalled.flatMap(({ device, sentence, found }) =>
    device.standing === 'scrapped' ? [] : removalOf(device, [recallReasonOf(notice, sentence), ...found]),
  );
  return [recorded, ...holds];
};

const mayNotRecord = (person: Person, on: Occasion['on']): Refusal | undefined =>
  person.roles.includes('administrator') || isCompetentOn(person, on)
    ? undefined
    : refusal('notice-not-entitled', { name: person.name });

/** A notice of a day that has not come, one that says nothing, and one that is recorded already. */
export const faultOfNotice = (
  { manufacturer, reference, issuedOn, affected }: NoticeText,
  known: readonly Notice[],
  on: Occasion['on'],
): Refusal | undefined => {
  if (issuedOn > on) return refusal('notice-in-future', { issuedOn }, 'issuedOn');
  const isBackwards = affected.some(
    ({ made }) => made?.from !== undefined && made.until !== undefined && made.from > `${made.until}~`,
  );
  if (isBackwards) return refusal('notice-dates-backwards', {}, 'affected');
  const same = known.find(
    (other) =>
      plain(other.manufacturer) === plain(manufacturer) && plain(other.reference) === plain(reference),
  );
  return same === undefined
    ? undefined
    : refusal('notice-recorded-already', { reference, notice: same.notice }, 'reference');
};

const plain = (text: string): string => text.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');

export const recallReasonOf = (notice: number, sentence: Message): Reason => ({
  key: recallReason,
  zone: 'whole-device',
  effect: 'refer-to-manufacturer',
  notice,
  sentence,
});

/** Whether a device is held for a notice already. */
export const isHeldFor = ({ reasons }: Device, notice: number): boolean =>
  reasons.some((reason) => reason.notice === notice);
