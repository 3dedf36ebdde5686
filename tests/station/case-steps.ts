/** The way of a device from a fall back to the bench, step by step, and how far the record says that it came. */
import { type BenchId, calendarDate, type Instant, instant } from '../../src/domain/brand.ts';
import { markingElements } from '../../src/domain/marking.ts';
import type { Call, InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';

/** The day of the invented depot; its clock moves on a second with every look. */
export const today = calendarDate('2026-03-10');
export const movingClock = (): (() => Instant) => {
  let at = Date.parse(`${today}T08:00:00.000Z`);
  return () => {
    at += 1000;
    return instant(new Date(at).toISOString());
  };
};

export interface People {
  readonly attendant: Call;
  readonly administrator: Call;
}

const output = async <Name extends OperationName>(
  call: Call,
  name: Name,
  input: InputOf<Name>,
): Promise<OutputOf<Name>> => {
  const result = await call(name, input);
  if (!result.ok) throw new Error(`${name}: ${result.error.sentence}`);
  return result.output;
};

const onePagePdf = Buffer.from(
  '%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n' +
    '3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 72 72]>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n',
).toString('base64');
const certificate = { number: 'R-88', on: today, issuer: 'Quillmoor' };

/** `serial` names the device before it has a bench ID. */
export const register = async ({ attendant }: People, serial: string): Promise<BenchId> => {
  const { benchId } = await output(attendant, 'device.register', {
    modelSheetId: 'M004',
    serial,
    dateOfManufacture: '2026-01',
    marking: markingElements.map((element) => ({ element, state: 'legible' as const })),
  });
  return benchId;
};

/** What the record says of a device, as far as the steps change it. */
export interface Reached {
  readonly standing: string;
  readonly fallCase: 'none' | 'open' | 'noted' | 'closed';
  readonly batch: 'none' | 'open' | 'shipped' | 'back';
  readonly evidence: number;
  readonly isReleased: boolean;
}

export const reachedBy = async ({ attendant }: People, benchId: BenchId): Promise<Reached> => {
  const { held } = await output(attendant, 'held.show', { benchId });
  const { batches } = await output(attendant, 'return-batch.list', {});
  const batch = batches.find(({ devices }) => devices.some((each) => each.benchId === benchId));
  const isBack = batch?.devices.find((each) => each.benchId === benchId)?.back !== undefined;
  const { fallCase } = held;
  return {
    standing: held.device.standing,
    fallCase:
      fallCase === undefined
        ? 'none'
        : fallCase.phase === 'closed'
          ? 'closed'
          : fallCase.facts.informed === undefined
            ? 'open'
            : 'noted',
    batch: batch === undefined ? 'none' : isBack ? 'back' : batch.phase === 'shipped' ? 'shipped' : 'open',
    evidence: held.evidence.length,
    isReleased: held.release !== undefined,
  };
};

const fallCaseOf = async ({ attendant }: People, benchId: BenchId): Promise<number> =>
  (await output(attendant, 'held.show', { benchId })).held.fallCase?.number ?? 0;

const batchOf = async ({ attendant }: People, benchId: BenchId): Promise<number> =>
  (await output(attendant, 'held.show', { benchId })).held.returnBatch ?? 0;

interface Step {
  readonly name: string;
  run(people: People, benchId: BenchId): Promise<unknown>;
  /** By hand: what changes with it. */
  readonly changes: Partial<Reached>;
}

export const registered: Reached = {
  standing: 'new',
  fallCase: 'none',
  batch: 'none',
  evidence: 0,
  isReleased: false,
};

export const steps: readonly Step[] = [
  {
    name: 'removed after a fall',
    run: ({ attendant }, benchId) => output(attendant, 'device.remove', { benchId, ground: 'fall' }),
    changes: { standing: 'quarantined' },
  },
  {
    name: 'fall case opened',
    run: ({ attendant }, benchId) =>
      output(attendant, 'fall-case.open', { benchId, facts: { happenedOn: today } }),
    changes: { fallCase: 'open' },
  },
  {
    name: 'fall case added to',
    run: async (people, benchId) =>
      output(people.attendant, 'fall-case.note', {
        fallCase: await fallCaseOf(people, benchId),
        facts: {
          userId: 'P006',
          job: 'Gantry 4',
          indicator: 'deployed',
          informed: 'Head of depot',
          bagNumber: 'B-17',
        },
      }),
    changes: { fallCase: 'noted' },
  },
  {
    name: 'fall case closed',
    run: async (people, benchId) =>
      output(people.administrator, 'fall-case.close', {
        fallCase: await fallCaseOf(people, benchId),
        findings: 'A slip.',
      }),
    changes: { fallCase: 'closed' },
  },
  {
    name: 'put in a return batch',
    run: ({ attendant }, benchId) => output(attendant, 'return-batch.add', { benchIds: [benchId] }),
    changes: { batch: 'open' },
  },
  {
    name: 'shipped',
    run: async (people, benchId) =>
      output(people.attendant, 'return-batch.ship', {
        batch: await batchOf(people, benchId),
        carrier: 'Harrow Freight',
        followUpOn: calendarDate('2026-03-24'),
        condition: 'Arrested a fall.',
        contamination: 'none known',
      }),
    changes: { batch: 'shipped', standing: 'at manufacturer' },
  },
  {
    name: 'back from its manufacturer',
    run: async (people, benchId) =>
      output(people.attendant, 'return-batch.receive', {
        batch: await batchOf(people, benchId),
        benchId,
        outcome: 'repaired',
        certificate,
      }),
    changes: { batch: 'back', standing: 'quarantined' },
  },
  {
    name: 'certificate recorded',
    run: ({ attendant }, benchId) =>
      output(attendant, 'held.record-evidence', {
        benchId,
        kind: 'repair-certificate',
        covers: [1],
        certificate,
        documents: [{ name: 'certificate.pdf', contentBase64: onePagePdf }],
      }),
    changes: { evidence: 1 },
  },
  {
    name: 'released to the bench',
    run: ({ attendant }, benchId) => output(attendant, 'release.take', { benchId, tag: '1' }),
    changes: { isReleased: true },
  },
];

/** What the record must say after the first `count` steps. */
export const afterSteps = (count: number): Reached =>
  Object.assign({}, registered, ...steps.slice(0, count).map(({ changes }) => changes)) as Reached;
