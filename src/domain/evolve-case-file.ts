/** How what is kept besides the state of devices changes with an event. */
import type { RecordedEvent } from './event.ts';
import { drawnReinspection, evolveReinspection } from './evolve-reinspection.ts';
import type { CaseFile } from './held/case-file.ts';
import type { FallCase } from './held/fall-case.ts';
import type { ReturnBatch } from './held/return-batch.ts';

export const evolveCaseFile = (file: CaseFile | undefined, recorded: RecordedEvent): CaseFile | undefined => {
  const { event, on, by } = recorded;
  switch (event.type) {
    case 'fall-case.opened': {
      const opened: FallCase = {
        kind: 'fall case',
        number: event.fallCase,
        phase: 'open',
        openedBy: by,
        openedOn: on,
        facts: event.facts,
        devices: [],
        photos: [],
        custody: [],
      };
      return withBag(opened, recorded, event.facts.bagNumber);
    }
    case 'return-batch.opened':
      return {
        kind: 'return batch',
        number: event.batch,
        phase: 'open',
        manufacturer: event.manufacturer,
        openedBy: by,
        openedOn: on,
        devices: [],
        followUps: [],
      };
    case 'repair-terms.recorded':
      return { kind: 'repair terms', modelSheetId: event.modelSheetId, ...event.terms, on, by };
    case 'reinspection.drawn':
      return drawnReinspection(event, recorded);
    case 'device-quote.recorded':
      return { kind: 'device quote', benchId: event.benchId, ...event.quote, on, by };
    case 'returns-basis.recorded':
      return { kind: 'returns basis', ...event.basis, on, by };
    default:
      if (file?.kind === 'fall case') return evolveFallCase(file, recorded);
      if (file?.kind === 'reinspection') return evolveReinspection(file, recorded);
      return file?.kind === 'return batch' ? evolveReturnBatch(file, recorded) : file;
  }
};

const evolveFallCase = (file: FallCase, recorded: RecordedEvent): FallCase => {
  const { event, on, by } = recorded;
  switch (event.type) {
    case 'fall-case.device-joined':
      return { ...file, devices: [...file.devices, event.benchId] };
    case 'fall-case.noted': {
      const noted = {
        ...file,
        facts: { ...file.facts, ...event.facts },
        photos: [...file.photos, ...event.photos],
      };
      return withBag(noted, recorded, event.facts.bagNumber);
    }
    case 'fall-case.closed':
      return { ...file, phase: 'closed', closed: { by, on, findings: event.findings } };
    default:
      return file;
  }
};

/** A bag that is sealed anew is the next link of the chain of custody. */
const withBag = (file: FallCase, { by, at }: RecordedEvent, bagNumber: string | undefined): FallCase =>
  bagNumber === undefined || bagNumber === '' || file.custody.at(-1)?.bagNumber === bagNumber
    ? file
    : { ...file, custody: [...file.custody, { bagNumber, by, at }] };

const evolveReturnBatch = (file: ReturnBatch, { event, on, by }: RecordedEvent): ReturnBatch => {
  switch (event.type) {
    case 'return-batch.device-added':
      return { ...file, devices: [...file.devices, { benchId: event.benchId }] };
    case 'return-batch.device-taken-out':
      return { ...file, devices: file.devices.filter(({ benchId }) => benchId !== event.benchId) };
    case 'return-batch.shipped': {
      const { type: _type, batch: _batch, ...shipment } = event;
      return { ...file, phase: 'shipped', shipped: { ...shipment, on, by } };
    }
    case 'return-batch.followed-up': {
      const { note, nextOn } = event;
      return { ...file, followUps: [...file.followUps, { on, by, note, nextOn }] };
    }
    case 'return-batch.device-came-back': {
      const { outcome, certificate } = event;
      const back = { on, by, outcome, ...(certificate === undefined ? {} : { certificate }) };
      const devices = file.devices.map((each) => (each.benchId === event.benchId ? { ...each, back } : each));
      const isWhole = devices.every(({ back: came }) => came !== undefined);
      return { ...file, devices, phase: isWhole ? 'closed' : file.phase };
    }
    default:
      return file;
  }
};
