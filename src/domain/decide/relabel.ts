/** A label of ours once more: only on a device whose manufacturer's marking was read, whole, just now. */
import { isCompetentOn } from '../competence.ts';
import type { Device } from '../device.ts';
import type { Occasion } from '../event.ts';
import { comparable } from '../identity/fragment.ts';
import { type MarkingEntry, markingElements } from '../marking.ts';
import type { Person } from '../person.ts';
import type { Procedure } from '../procedure.ts';
import { refusal } from '../refusal.ts';
import type { ReprintReason } from '../tag-content.ts';
import type { Reason } from '../verdict.ts';
import type { Decision } from './decision.ts';
import { removalOf } from './device.ts';

export interface MarkingReading {
  /** Every element, answered by itself, as it reads on the device now. */
  readonly marking: readonly MarkingEntry[];
  readonly reprintBecause: ReprintReason;
}

/**
 * All legible: a label may be printed, and it is counted. Any element that is not: the device is removed at once for each
 * of them, and no label is printed, for it could hide what is lost. The serial number is compared with that of the register;
 * where it differs, it is another device. An identity that was presumed ends where a competent person reads all of it.
 */
export const decideRelabel = (
  device: Device,
  { marking, reprintBecause }: MarkingReading,
  procedure: Procedure,
  found: readonly Reason[],
  person: Person,
  { on }: Occasion,
): Decision => {
  const { benchId } = device;
  if (device.standing === 'scrapped') return refusal('device-scrapped', { benchId });
  const unanswered = markingElements.filter(
    (element) => marking.filter((entry) => entry.element === element).length !== 1,
  );
  if (unanswered.length > 0)
    return refusal('marking-incomplete', { elements: unanswered.join(', ') }, 'marking');
  const serial = marking.find(({ element }) => element === 'serialNumber');
  if (serial?.state === 'legible') {
    const read = serial.text ?? '';
    if (read === '') return refusal('serial-needed', {}, 'marking');
    if (device.serial === '' || comparable(read) !== comparable(device.serial)) {
      return refusal('serial-differs', { read, registered: device.serial, benchId }, 'marking');
    }
  }
  const reasons = lostElements(procedure, marking);
  if (reasons.length > 0) {
    return [
      { type: 'device.marking-read', benchId, marking: [...marking] },
      ...removalOf(device, [...reasons, ...found]),
    ];
  }
  if (device.presumedIdentity !== undefined && !isCompetentOn(person, on))
    return refusal('identity-competent-person-needed', { name: person.name });
  return [{ type: 'device.marking-read', benchId, marking: [...marking], reprintBecause }];
};

/** One reason for each element that is not legible, in the words of the procedure. */
const lostElements = (procedure: Procedure, marking: readonly MarkingEntry[]): readonly Reason[] =>
  procedure.checks.flatMap((check) => {
    if (check.kind !== 'marking') return [];
    const state = marking.find(({ element }) => element === check.element)?.state;
    return state === undefined || state === 'legible'
      ? []
      : [
          {
            key: `${check.key}.${state}`,
            zone: check.zone,
            effect: 'remove' as const,
            sentence: check.reasons[state],
          },
        ];
  });
