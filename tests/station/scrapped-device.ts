/** A device that was scrapped on the last steps of its way back: everything that could still lie open about it does. */
import { type BenchId, calendarDate } from '../../src/domain/brand.ts';
import { pdfDocument, photoDocument } from '../support/given-documents.ts';
import { goodAnswers } from '../support/shipped-rules.ts';
import { demo, demoStation, type TestStation, temporaryFolder } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { sampleDevice } from './sample-device.ts';

export const today = calendarDate('2026-03-10');
export const certificate = { number: 'R-88', on: today, issuer: 'Quillmoor' };
export const serial = 'Q26C49300';
const ownBadge = {
  attendant: demo.attendant,
  inspector: demo.inspector,
  administrator: demo.administrator,
} as const;
export const windows = Object.keys(ownBadge) as (keyof typeof ownBadge)[];

export interface ScrappedDevice {
  readonly station: TestStation;
  readonly benchId: BenchId;
  readonly model: { readonly manufacturer: string; readonly model: string };
  /** Text of its last quarantine tag. */
  readonly tag: string;
  /** The inspection that it passed, the one that was open when it was scrapped, and the answers of both. */
  readonly passed: number;
  readonly abandoned: number;
  readonly answers: ReturnType<typeof goodAnswers>;
  /** Its registration, and the answer to its first check, as `record.amend` names them. */
  readonly registered: number;
  readonly answered: number;
  /** A proposal that waits for the second person. */
  readonly identityCase: number;
  readonly fallCase: number;
  readonly batch: number;
  /** Evidence that waits for the second person. */
  readonly evidence: number;
  readonly kitId: string;
  readonly printerId: string;
}

/** One window for each of the three, signed in. */
export const scrappedDevice = async (): Promise<ScrappedDevice> => {
  const station = await demoStation();
  for (const window of windows) await station.callAs(window)('session.sign-in', { badge: ownBadge[window] });
  const as = (badge: string) => station.expectOutput('session.sign-in', { badge });
  const { expectOutput } = station;
  const printerId = await folderPrinter(station);
  await as(demo.inspector);
  const { benchId } = await expectOutput('device.register', sampleDevice(serial, `QM15${serial}`));
  const walked = await walk(station, benchId);
  await expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
  const { identityCase } = await expectOutput('identity.open', { observation: { serial } });
  await expectOutput('identity.propose', { identityCase, candidate: benchId, pin: demo.pin });
  await as(demo.attendant);
  const { kitId } = await expectOutput('kit.save', { name: 'Gantry', code: 'KIT9', benchIds: [benchId] });
  await expectOutput('custody.check-in', {
    benchId,
    withoutCheckOut: true,
    answers: [
      { question: 'fall', said: 'yes', choices: ['fall'] },
      { question: 'exposure', said: 'no' },
      { question: 'questionable', said: 'no' },
    ],
  });
  await expectOutput('device.remove', { benchId, ground: 'other', note: 'Rattles.' });
  const { symbols } = await expectOutput('tag.issue', { benchId, kind: 'quarantine' });
  const tag = symbols.find(({ text }) => text.startsWith('SRL '))!.text;
  await expectOutput('tag.prove', { text: tag });
  const fallCase = await closedFallCase(station, benchId);
  const batch = await returned(station, benchId);
  const evidence = await everyEvidence(station, benchId);
  await as(demo.attendant);
  await expectOutput('release.take', { benchId, tag });
  await as(demo.inspector);
  const again = await walk(station, benchId);
  const { device, inspections } = await expectOutput('record.amendable', { benchId });
  await as(demo.attendant);
  await expectOutput('device.scrap', {
    benchId,
    lifelineCut: true,
    markingDefaced: true,
    witness: 'P006',
    photos: [await photoDocument()],
  });
  return {
    station,
    benchId,
    model: again.device,
    tag,
    passed: walked.inspection,
    abandoned: again.inspection,
    answers: goodAnswers(again.device.ratedLengthM),
    registered: device!.find(({ field }) => field === 'serial')!.amends,
    answered: inspections![0]!.answers[0]!.amends,
    identityCase,
    fallCase,
    batch,
    evidence,
    kitId,
    printerId,
  };
};

const folderPrinter = async ({ expectOutput }: TestStation): Promise<string> => {
  await expectOutput('session.sign-in', { badge: demo.administrator });
  const { printerId } = await expectOutput('printer.save', {
    settings: {
      kind: 'folder',
      name: 'Folder',
      stock: { widthMm: 100, heightMm: 150 },
      folder: await temporaryFolder(),
    } as never,
    tagKinds: ['status', 'quarantine'],
  });
  return printerId;
};

const closedFallCase = async ({ expectOutput }: TestStation, benchId: BenchId): Promise<number> => {
  const { fallCase } = await expectOutput('fall-case.open', {
    benchId,
    facts: {
      happenedOn: today,
      userId: 'P006',
      job: 'Gantry 4',
      indicator: 'deployed',
      informed: 'Head of depot',
      bagNumber: 'B-17',
    },
  });
  await expectOutput('session.sign-in', { badge: demo.administrator });
  await expectOutput('fall-case.close', { fallCase: fallCase.number, findings: 'A slip.' });
  return fallCase.number;
};

const returned = async ({ expectOutput }: TestStation, benchId: BenchId): Promise<number> => {
  const { batch } = await expectOutput('return-batch.add', { benchIds: [benchId] });
  await expectOutput('return-batch.ship', {
    batch: batch.number,
    carrier: 'Harrow Freight',
    followUpOn: today,
    condition: 'Arrested a fall.',
    contamination: 'none known',
  });
  await expectOutput('return-batch.receive', {
    batch: batch.number,
    benchId,
    outcome: 'repaired',
    certificate,
  });
  return batch.number;
};

/** All that its two reasons ask for, and one statement more that nobody agreed to. */
const everyEvidence = async ({ expectOutput }: TestStation, benchId: BenchId): Promise<number> => {
  await expectOutput('session.sign-in', { badge: demo.inspector });
  await expectOutput('held.record-evidence', {
    benchId,
    kind: 'repair-certificate',
    covers: [1, 2],
    certificate,
    documents: [await pdfDocument()],
  });
  const { held } = await expectOutput('held.record-evidence', {
    benchId,
    kind: 'doubt-settled',
    covers: [2],
    statement: 'A loose tag wire rattled.',
  });
  return held.evidence.at(-1)!.evidence;
};
