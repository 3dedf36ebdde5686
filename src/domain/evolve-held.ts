/** How a device changes with an event of its being held, and what such an event touches. */
import type { CalendarDate } from './brand.ts';
import type { Device } from './device.ts';
import { endTag } from './end-tag.ts';
import type { RecordedEvent } from './event.ts';
import type { Touched } from './evolve.ts';
import {
  deviceQuoteKey,
  fallCaseKey,
  repairTermsKey,
  returnBatchKey,
  returnsBasisKey,
} from './held/case-file.ts';
import type { RecordedEvidence } from './held/evidence.ts';
import type { HeldEvent } from './held-event.ts';

export const heldTouches = (event: HeldEvent): Touched => {
  switch (event.type) {
    case 'evidence.recorded':
    case 'evidence.confirmed':
    case 'evidence.withdrawn':
    case 'device.released':
    case 'device.scrapped':
      return { benchId: event.benchId };
    case 'fall-case.opened':
    case 'fall-case.noted':
    case 'fall-case.closed':
      return { caseFile: fallCaseKey(event.fallCase) };
    case 'fall-case.device-joined':
    case 'fall-case.device-closed':
      return { caseFile: fallCaseKey(event.fallCase), benchId: event.benchId };
    case 'repair-terms.recorded':
      return { caseFile: repairTermsKey(event.modelSheetId) };
    case 'device-quote.recorded':
      return { caseFile: deviceQuoteKey(event.benchId), benchId: event.benchId };
    case 'returns-basis.recorded':
      return { caseFile: returnsBasisKey };
    case 'return-batch.opened':
    case 'return-batch.shipped':
    case 'return-batch.followed-up':
      return { caseFile: returnBatchKey(event.batch) };
    case 'return-batch.device-added':
    case 'return-batch.device-taken-out':
    case 'return-batch.device-shipped':
    case 'return-batch.device-came-back':
      return { caseFile: returnBatchKey(event.batch), benchId: event.benchId };
  }
};

/** The same device where the event is none of these. */
export const held = (device: Device, recorded: RecordedEvent): Device => {
  const { event, seq, on, by } = recorded;
  const { returnBatch: _batch, ...outOfBatch } = device;
  switch (event.type) {
    case 'evidence.recorded': {
      const { type: _type, benchId: _benchId, ...entry } = event;
      return { ...device, evidence: [...(device.evidence ?? []), { ...entry, evidence: seq, by, on }] };
    }
    case 'evidence.confirmed':
      return withEvidence(device, event.evidence, (entry) =>
        entry.confirmed === undefined
          ? { ...entry, confirmed: { by, on } }
          : { ...entry, alsoConfirmed: [...(entry.alsoConfirmed ?? []), { by, on }] },
      );
    case 'evidence.withdrawn': {
      const withdrawn = { by, on, because: event.because };
      return withEvidence(device, event.evidence, (entry) => ({ ...entry, withdrawn }));
    }
    case 'device.released': {
      const { currentTag: _tag, ...untagged } = device;
      return {
        ...untagged,
        release: { by, on, tagNumber: event.tagNumber },
        pastTags: endTag(device, on, 'released to the bench'),
      };
    }
    case 'device.scrapped':
      return scrapped(device, recorded, event);
    case 'fall-case.device-joined':
      return {
        ...device,
        fallCases: [...(device.fallCases ?? []), { fallCase: event.fallCase, openedOn: on }],
      };
    case 'fall-case.device-closed':
      return {
        ...device,
        fallCases: (device.fallCases ?? []).map((each) =>
          each.fallCase === event.fallCase ? { ...each, closedOn: on, covers: device.reasons.length } : each,
        ),
      };
    case 'return-batch.device-added':
      return { ...device, returnBatch: event.batch };
    case 'return-batch.device-taken-out':
      return outOfBatch;
    case 'return-batch.device-shipped':
      return { ...device, standing: 'at manufacturer' };
    case 'return-batch.device-came-back':
      return { ...outOfBatch, standing: 'quarantined' };
    default:
      return device;
  }
};

const withEvidence = (
  device: Device,
  number: number,
  change: (entry: RecordedEvidence) => RecordedEvidence,
): Device => ({
  ...device,
  evidence: (device.evidence ?? []).map((entry) => (entry.evidence === number ? change(entry) : entry)),
});

const scrapped = (
  device: Device,
  { on, by }: RecordedEvent,
  { witness, photos }: Extract<HeldEvent, { type: 'device.scrapped' }>,
): Device => {
  const { currentTag: _tag, taggedDue: _due, release: _release, returnBatch: _batch, ...rest } = device;
  return {
    ...rest,
    standing: 'scrapped',
    pastTags: endTag(device, on, 'scrapped'),
    scrapped: { by, on, witness, photos },
  };
};

/**
 * With the reasons that ended with a passing inspection; what was recorded for them stays in the events. An element of the
 * marking that was lost was found legible by that inspection, or it would not have passed.
 */
export const withClosedReasons = (device: Device, inspection: number, closedOn: CalendarDate): Device => {
  const { evidence: _evidence, release: _release, fallCases: _cases, ...rest } = device;
  if (device.reasons.length === 0) return rest;
  const closed = device.reasons.map(({ key, sentence }) => ({ key, sentence, closedOn, inspection }));
  const marking = rest.marking.map((entry) =>
    entry.state === 'illegible' || entry.state === 'missing'
      ? { ...entry, state: 'legible' as const }
      : entry,
  );
  return { ...rest, marking, closedReasons: [...(device.closedReasons ?? []), ...closed] };
};
